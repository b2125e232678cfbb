// The papers that lie where the drawing lies: sheets, lists and comparing. Who opens one of them soon opens the next, so
// they come together.

export { CompareView } from "./compare-view.js";
export { ListsView } from "./lists-view.js";
export { SheetsView } from "./sheets-view.js";
