/** Words about the connection to the files. */
export const deskWords = {
  hostGone:
    'Windrow is not running behind this window any more. Start Windrow again. What you see here stays until you close the window.',
  notLetIn:
    'Windrow does not know this tab. Press Enter in the terminal where Windrow runs, and open the address that it prints in a new tab. What you saved is safe, and this tab may stay open.',
};
