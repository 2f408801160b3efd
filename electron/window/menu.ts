import type { MenuItemConstructorOptions } from "electron";

/** The menu with its keys; everything the screens do has its own place and keys there. */
export function menuTemplate(platform: NodeJS.Platform, print: () => void): MenuItemConstructorOptions[] {
  const isMac = platform === "darwin";
  return [
    ...(isMac ? [{ role: "appMenu" } as const] : []),
    {
      label: "&File",
      submenu: [
        { label: "&Print…", accelerator: "CmdOrCtrl+P", click: print },
        { type: "separator" },
        isMac ? { role: "close" } : { role: "quit", label: "&Quit", accelerator: "CmdOrCtrl+Q" },
      ],
    },
    {
      label: "&Edit",
      submenu: [
        { role: "undo" },
        { role: "redo" },
        { type: "separator" },
        { role: "cut" },
        { role: "copy" },
        { role: "paste" },
        { role: "selectAll" },
      ],
    },
    {
      label: "&View",
      submenu: [
        { role: "resetZoom" },
        { role: "zoomIn" },
        { role: "zoomOut" },
        { type: "separator" },
        { role: "togglefullscreen" },
      ],
    },
    { label: "&Window", submenu: [{ role: "minimize" }, ...(isMac ? [{ role: "front" } as const] : [])] },
  ];
}
