/**
 * The rooms of each house from the ground up. A room imports only itself and rooms before it; nothing is exempt. What
 * stands loose at the top ("recipe") may import every room.
 */
export const floors: Readonly<Record<"core" | "electron" | "renderer", readonly string[]>> = {
  core: [
    "ground",
    "words",
    "settings",
    "bytes",
    "recording",
    "stated",
    "trial",
    "events",
    "weight",
    "measures",
    "sides",
    "gate",
    "criteria",
    "result",
    "protocol",
    "session",
    "assignment",
    "sheet",
  ],
  electron: [
    "terminal",
    "program",
    "refusals",
    "bounded-json",
    "files",
    "pdf",
    "threads",
    "cautions",
    "register",
    "layouts",
    "boundary",
    "jobs",
    "workspace",
    "watch",
    "register-host",
    "handlers",
    "worker",
    "browser",
    "window",
    "command",
  ],
  renderer: ["words", "charts", "shell", "cautions", "recordings", "traces", "sides", "athletes", "sheet"],
};

/** What everything stands on. */
export const ground = "ground";

/** Imports no room of the core but the ground, and none imports it. */
export const apart = "simulate";

/** What may stand at the top of a house beside its rooms. */
export const loose: Readonly<Record<keyof typeof floors, readonly string[]>> = {
  core: ["README.md", "analyze.ts", "tsconfig.json"],
  electron: ["tsconfig.json"],
  renderer: ["application.tsx", "index.html", "main.tsx", "tsconfig.json"],
};
