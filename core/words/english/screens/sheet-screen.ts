/** What the screen around the sheet says. */
export const sheetScreen = {
  pdf: "PDF",
  html: "HTML",
  csvEveryMeasure: "CSV, every measure",
  jsonWholeResult: "JSON, the whole result",
  sessionJsonWithAllDecisions: "session.json with all decisions",
  takeSheetAlong: "Take the sheet along",
  sheet: "Sheet",
  print: "Print",
  writingSheet: "Writing the sheet …",
};
