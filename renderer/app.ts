import './shell/wr-shell.ts';
import { connectDesk } from './desk/connect.ts';
import { startApp } from './shell/start.ts';

void startApp(connectDesk(), document.body);
