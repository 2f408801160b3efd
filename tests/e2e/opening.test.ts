import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";

const folder = mkdtempSync(join(tmpdir(), "counterpoise-opener-"));
const noted = join(folder, "asked-to-open");
let application: LaunchedApplication;

beforeAll(async () => {
  // Stands for the system's opener, and stays as long as the test does: every user can list its command line.
  const opener = join(folder, "xdg-open");
  writeFileSync(
    opener,
    `#!/bin/sh\nprintf %s "$1" > '${noted}.part' && mv '${noted}.part' '${noted}'\nwhile [ -e '${noted}' ]; do sleep 0.2; done\n`,
  );
  chmodSync(opener, 0o755);
  const PATH = `${folder}:${process.env.PATH}`;
  const environment = { PATH, DISPLAY: ":77", COUNTERPOISE_NO_BROWSER: "", CI: "" };
  application = await launchApplication({ environment });
});
afterAll(async () => {
  await application?.close();
  rmSync(folder, { recursive: true });
});

/** The command lines of all processes, as every user of the computer can read them. */
function commandLines(): string {
  return readdirSync("/proc")
    .filter((name) => /^\d+$/.test(name))
    .map((name) => {
      try {
        return readFileSync(`/proc/${name}/cmdline`, "latin1");
      } catch {
        // It has ended meanwhile.
        return "";
      }
    })
    .join("\n");
}

test.runIf(process.platform === "linux")(
  "the browser is opened by a file whose token no process list shows; used once it is gone, and reloading goes on",
  async () => {
    await expect.poll(() => existsSync(noted), { timeout: 30_000 }).toBe(true);
    const opened = readFileSync(noted, "utf8");
    const file = fileURLToPath(opened);
    const token = /127\.0\.0\.1:\d+\/#([\w-]+)/.exec(readFileSync(file, "utf8"))?.[1] ?? "";
    expect(token.length).toBeGreaterThan(40);
    const listed = commandLines();
    expect(listed).toContain(opened);
    expect(listed).not.toContain(token);

    const { page, context, problems } = await application.open({ address: opened });
    const areas = page.getByRole("navigation", { name: "Areas" });
    await areas.waitFor();
    expect(page.url()).toBe(`${application.origin}/`);
    expect(await page.evaluate(() => document.referrer)).toBe("");
    expect(await context.cookies()).toEqual([]);
    await expect.poll(() => existsSync(dirname(file))).toBe(false);
    await page.reload();
    await areas.waitFor();
    expect(commandLines()).not.toContain(token);
    expect(problems).toEqual([]);

    // The token is spent: another tab learns where to get one of its own.
    const second = await application.open({ address: `${application.origin}/#${token}` });
    await second.page.getByText("Press Enter where Counterpoise was started").waitFor();
    const third = await application.open();
    await third.page.getByRole("navigation", { name: "Areas" }).waitFor();
  },
);
