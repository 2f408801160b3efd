import { type BrowserWindow, dialog } from "electron";

/**
 * Asks before decisions are lost: the page refuses to go while it holds some that are not saved, and unlike a browser
 * a window would then stay open without a word.
 */
export function askBeforeLeaving(window: BrowserWindow): void {
  window.webContents.on("will-prevent-unload", (event) => {
    const discard = 1;
    const choice = dialog.showMessageBoxSync(window, {
      type: "question",
      message: "Decisions that are not saved would be lost.",
      detail: "To keep them, take “session.json with all decisions” along under Sheet.",
      buttons: ["Keep Counterpoise open", "Discard the decisions"],
      defaultId: 0,
      cancelId: 0,
      noLink: true,
    });
    // here, preventing the event's default lets the page go
    if (choice === discard) event.preventDefault();
  });
}
