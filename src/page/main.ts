import { render } from 'lit-html';
import { board } from './board.js';
import { attendDesign } from './design/attend.js';
import { firstDesign } from './first-design.js';
import { keepOffline } from './offline/keep-offline.js';
import { watchScreen } from './screen.js';
import { servedName } from './served/server.js';
import { startApp } from './start-app.js';

const { design, keeping, attend } = await firstDesign();
const app = startApp(design, (to) => render(board(to), document.body), keeping);
attend(app);
watchScreen(app);
attendDesign(app);
// a program on this machine is there or is not; and a newer one serves another page at the same address
if (servedName() === null) void keepOffline();
