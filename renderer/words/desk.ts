/** Words about the connection to the files. */
export const deskWords = {
  hostGone:
    'Windrow is not running behind this window any more. Start Windrow again. What you see here stays until you close the window.',
  notLetIn:
    'Windrow does not know this tab. Press Enter in the terminal where Windrow runs; where there is none, start Windrow again. Open the new address in a new tab. What you saved is safe, and this tab may stay open.',
};
