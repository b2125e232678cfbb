// The papers that lie where the case lies at first: panels, sheets, lists and comparing. Who opens one of them soon
// opens the next, so they come together.

export { CompareView } from "./compare-view.js";
export { ListsView } from "./lists-view.js";
export { PanelsView } from "./panels-view.js";
export { SheetsView } from "./sheets-view.js";
