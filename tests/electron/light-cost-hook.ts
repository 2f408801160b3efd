import { registerHooks } from "node:module";

/** For programs outside of the test runner (`node --import`): hundreds of keys at the least cost that is read. */
registerHooks({
  resolve: (specifier, context, next) =>
    next(
      specifier.endsWith("/passphrase-cost.ts") ? new URL("light-passphrase-cost.ts", import.meta.url).href : specifier,
      context,
    ),
});
