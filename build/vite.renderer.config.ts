import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

/**
 * The screens. Relative addresses, because the window loads them from the disk and the browser from a loopback address;
 * nothing inlined, because the content policy allows scripts and fonts from the application itself only.
 */
export default defineConfig({
  root: new URL("../renderer", import.meta.url).pathname,
  base: "./",
  publicDir: false,
  // plotly.js still speaks of Node's name for the global object
  define: { global: "globalThis" },
  plugins: [react()],
  build: {
    outDir: "../dist/renderer",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 1500,
  },
});
