/** What the notices above every area say. */
export const notices = {
  region: "Notices",
  simulated: "Simulated recordings of an invented athlete.",
  notInTheRegister: "Not in the register.",
  keepItThere: "Keep it there",
  everyStatusWithheld: (reason: string) => `${reason} Values are shown; statuses are withheld today.`,
  someStatusesWithheld: (reasons: string) => `${reasons} Values are shown; statuses of these tests are withheld.`,
  cautionsNotKnown: (by: string) => `Cautions: what was not asked is not known, as ${by} states.`,
  cautionsNotAnswered: "Cautions for jump testing: not answered.",
  openCautions: (cautions: string) => ` Open: ${cautions}.`,
  cautionsAnswered: (date: string, by: string, open: string) => `Cautions answered ${date}, ${by}.${open}`,
  lastChange: (change: string, beyond: string, effect: string) => `Last change: ${change}${beyond}. ${effect}`,
};
