/** Pictures and papers: results in, drawings out. */
export * from "./inkAndPaper.ts";
export type { PlotBand } from "./levelPlot/bandLayout.ts";
export type { EventKind, EventMark, PlotEvent } from "./levelPlot/eventLayout.ts";
export * from "./levelPlot/levelPlotModel.ts";
export { levelPlotSvg } from "./levelPlot/levelPlotSvg.ts";
export type { TimeAxis } from "./levelPlot/timeAxis.ts";
