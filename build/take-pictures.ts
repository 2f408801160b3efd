// Takes the README's pictures from the demo world: node build/take-pictures.ts (Node 24, after `npm test` has built).
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "../tests/architecture/imports.ts";
import { launchApplication } from "../tests/e2e/launched-application.ts";

const pictures = [
  { area: "Traces", colourScheme: "light" },
  { area: "Sides", colourScheme: "light" },
  { area: "Sheet", colourScheme: "light" },
  { area: "Recordings", colourScheme: "dark" },
  { area: "Athletes", colourScheme: "light" },
] as const;

/** A first start builds the demo world's register. */
const firstStartMilliseconds = 60_000;

const folder = join(projectRoot, "build/pictures");
mkdirSync(folder, { recursive: true });
const application = await launchApplication();
for (const { area, colourScheme } of pictures) {
  const { page, context } = await application.open({ width: 1280, height: 800, colourScheme });
  const navigation = page.getByRole("navigation", { name: "Areas" });
  await navigation.waitFor({ timeout: firstStartMilliseconds });
  await navigation.getByRole("button", { name: area }).click();
  await page.waitForLoadState("networkidle");
  await page.screenshot({ path: join(folder, `${area.toLowerCase()}.png`) });
  await context.close();
}
await application.close();
