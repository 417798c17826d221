/** The panels of the Table that are needed once a rack is dealt; they come in one file of their own. */
import './play/wr-others.ts';
import './wr-give-panel.ts';
import './wr-note-dialog.ts';
import './wr-plan-panel.ts';
import './wr-reading-panel.ts';
import './wr-receive-panel.ts';
