import { builtinModules } from "node:module";
import { defineConfig } from "vite";

const root = new URL("..", import.meta.url).pathname;

/** The host's programs for Node and Electron: window, loopback server, command line. */
export default defineConfig({
  root,
  publicDir: false,
  ssr: { noExternal: true, external: ["electron", "pdfmake"] },
  build: {
    ssr: true,
    outDir: "dist/electron",
    emptyOutDir: false,
    target: "node24",
    minify: false,
    sourcemap: true,
    rolldownOptions: {
      input: {
        main: "electron/window/main.ts",
        serve: "electron/browser/serve.ts",
        "host-worker": "electron/worker/host-worker.ts",
        "job-worker": "electron/jobs/job-worker.ts",
        "weighing-program": "electron/register/strength/weighing-program.ts",
        command: "electron/command/main.ts",
      },
      external: ["electron", ...builtinModules, /^node:/],
      output: { format: "es", entryFileNames: "[name].js", chunkFileNames: "[name].js" },
    },
  },
});
