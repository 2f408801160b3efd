import { afterAll, beforeAll, expect, test } from "vitest";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { screenSizes, walkScreens } from "./walk-screens.ts";

let application: LaunchedApplication;
beforeAll(async () => {
  application = await launchApplication();
});
afterAll(async () => application?.close());

const [smallest, , largest] = screenSizes;

// axe at one size in each colour scheme is a sample; tests/bench/screen-sizes.ts lets it look at every size.
test.each([
  { colourScheme: "light", axeAt: smallest! },
  { colourScheme: "dark", axeAt: largest! },
] as const)(
  "the screens in $colourScheme: axe finds nothing at $axeAt.width × $axeAt.height, a sample of tests/bench/screen-sizes.ts; at 1024, 1280 and 1920 nothing scrolls sideways, the console is silent",
  async ({ colourScheme, axeAt }) => {
    const { states, faults, problems, requests } = await walkScreens(application, { colourScheme, axeAt: [axeAt] });
    expect(states.length).toBeGreaterThanOrEqual(13);
    expect(faults).toEqual([]);
    expect(problems).toEqual([]);
    const { origin } = application;
    expect(requests.filter((address) => !address.startsWith(origin) && !address.startsWith("data:"))).toEqual([]);
  },
);
