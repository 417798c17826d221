/** Words about the connection to the files. */
export const deskWords = {
  hostGone:
    'Windrow is not running behind this window any more. Start Windrow again. What you see here stays until you close the window.',
};
