import { defineConfig } from "vite";

const root = new URL("..", import.meta.url).pathname;

/** The preload: a sandboxed window takes exactly one CommonJS file. */
export default defineConfig({
  root,
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: "electron/window/preload.ts",
    outDir: "dist/electron",
    emptyOutDir: false,
    target: "node24",
    minify: false,
    rolldownOptions: {
      external: ["electron"],
      output: { format: "cjs", entryFileNames: "preload.cjs", codeSplitting: false },
    },
  },
});
