import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { projectRoot } from "../architecture/imports.ts";
import { strongPassphrase } from "../electron/strong-passphrase.ts";
import { type LaunchedApplication, launchApplication } from "./launched-application.ts";
import { faultsOf } from "./screen-faults.ts";

const guardFile = new URL("./refuse-network.ts", import.meta.url);
const programFile = new URL("./try-network.ts", import.meta.url);
const recordings = join(projectRoot, "sample-traces/maren-tveitlund/4-month-7");
/** A machine that is busy with something else needs long for a step, and for all of them. */
const stepMilliseconds = 90_000;
const wholeMilliseconds = 480_000;

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "counterpoise-athletes-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Attempt {
  readonly thread: "main" | "worker";
  readonly what: string;
  readonly to: string;
  readonly allowed: boolean;
}

const attemptsIn = (file: string): readonly Attempt[] =>
  readFileSync(file, "utf8")
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as Attempt);

test("what watches the network sees and refuses each way out, on the thread of the window and on the worker's", () => {
  const log = join(folder, "proof.log");
  execFileSync(process.execPath, ["--import", guardFile.href, fileURLToPath(programFile)], {
    env: { ...process.env, COUNTERPOISE_NETWORK_LOG: log },
  });
  const refused = attemptsIn(log).filter(({ allowed }) => !allowed);
  for (const thread of ["main", "worker"]) {
    const seen = refused.filter((each) => each.thread === thread).map(({ what, to }) => `${what} ${to}`);
    expect(seen, thread).toEqual([
      "socket 192.0.2.1",
      "request 192.0.2.1",
      "name counterpoise.invalid",
      "datagram a datagram",
      "fetch 192.0.2.1",
      "listen every address",
    ]);
  }
});

/** Answers the cautions in the form that is open, so that nothing is closed. */
async function answerCautions(page: Page): Promise<void> {
  await page.getByLabel("Pain now in the involved knee").fill("1");
  await page.getByLabel("Effusion now").selectOption("none");
  for (const question of await page.getByRole("radiogroup", { name: /\?$/ }).all()) {
    await question.getByRole("radio", { name: "no" }).check();
  }
  await page
    .getByRole("radiogroup", { name: /practised landing/ })
    .getByRole("radio", { name: "yes" })
    .check();
}

/** The ISO date some days from today on this machine's calendar. */
function daysFromToday(days: number): string {
  const day = new Date();
  day.setDate(day.getDate() + days);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

const goTo = (page: Page, area: string) =>
  page.getByRole("navigation", { name: "Areas" }).getByRole("button", { name: area }).click();
const press = (page: Page, name: string | RegExp) => page.getByRole("button", { name, exact: true }).click();

describe.each([
  ["light", 1024],
  ["dark", 1920],
] as const)("a whole session with the register in %s at %i", (colourScheme, width) => {
  let application: LaunchedApplication;
  const log = () => join(folder, `${colourScheme}.log`);
  beforeAll(async () => {
    application = await launchApplication({
      nodeArguments: ["--import", guardFile.href],
      environment: { COUNTERPOISE_NETWORK_LOG: log() },
    });
  });
  afterAll(async () => application?.close());

  test(
    "leads from the demo to a person's own athlete, a session, its sheet, locking and erasing; no byte leaves",
    async () => {
      const { page, context, problems, requests } = await application.open({ width, height: 900, colourScheme });
      page.setDefaultTimeout(stepMilliseconds);
      const { origin } = application;
      const faults: string[] = [];
      const look = async (state: string) => {
        await page.waitForFunction(() => document.querySelector('[aria-busy="true"]') === null);
        for (const fault of await faultsOf(page)) faults.push(`${state}: ${fault}`);
      };

      await goTo(page, "Athletes");
      await page.getByRole("heading", { name: /Maren Tveitlund/ }).waitFor();
      await page.getByText("Invented athletes, simulated recordings").waitFor();
      await look("the demo");
      await page.getByLabel("Search code or name").fill("ekre");
      await page.getByText("1 athlete found").waitFor();
      await page.getByRole("button", { name: /Jonas Ekre/ }).click();
      await page.getByRole("heading", { name: /Jonas Ekre/ }).waitFor();

      await press(page, "Start your own register");
      await page.getByText("the encryption of its disk").waitFor();
      await look("an empty register");
      await press(page, "Add an athlete");
      await press(page, "Keep");
      await page.getByText("Code is missing.").waitFor();
      await page.getByLabel("Code", { exact: true }).fill("GH-30");
      await page.getByLabel("Name, if wanted").fill("Eira Solbakk");
      await look("adding an athlete");
      await press(page, "Keep");
      await page.getByRole("heading", { name: /Eira Solbakk/ }).waitFor();
      await page.getByText("Nobody has said whether a knee is involved").waitFor();
      await look("asked whether anybody is injured");
      await press(page, "Add an operation");
      await page.getByLabel("Side", { exact: true }).selectOption("right");
      await page.getByLabel("Body part").selectOption("knee");
      await page.getByLabel("Makes its side the involved one").selectOption("yes");
      await page.getByLabel("Operation", { exact: true }).fill("anterior cruciate ligament reconstruction");
      await page.getByLabel("Meniscus or cartilage repaired").selectOption("no");
      await page.getByLabel("Body part").selectOption("knee");
      await page.getByLabel("Makes its side the involved one").selectOption("yes");
      await press(page, "Keep");
      await page.getByText("enter it, or say that it is not known").waitFor();
      await page.getByLabel("Date of the operation is not known").check();
      await look("an operation of an unknown day");
      await page.getByLabel("Date of the operation is not known").uncheck();
      await page.getByLabel("Date of the operation", { exact: true }).fill(daysFromToday(-30 * 7));
      await press(page, "Keep");
      await page.getByText("right side involved").first().waitFor();

      await press(page, "Start the next session");
      await page.getByLabel("Protocol", { exact: true }).selectOption("return-to-pivoting-sport");
      await page.getByText("Most attempts").waitFor();
      await press(page, "Begin the session");
      await page.getByText("Pain is a number from 0 to 10.").waitFor();
      await look("planning a session");
      await page.getByLabel("Tester", { exact: true }).fill("K. L.");
      await answerCautions(page);
      await look("the cautions answered");
      await press(page, "Begin the session");
      await page.getByText("Four valid single-leg drop jumps from 0.20 m on the left.").waitFor();
      await press(page, "Ask before the first single-leg or drop test");
      expect(await page.getByRole("dialog").getByRole("radio", { checked: true }).count()).toBe(0);
      expect(await page.getByRole("dialog").getByRole("radiogroup").count()).toBe(1);
      await look("asking what can have changed");
      await page.getByLabel("Pain now in the involved knee").fill("0");
      await page.getByLabel("Swelling now").selectOption("none");
      await page
        .getByRole("radiogroup", { name: /given way today/ })
        .getByRole("radio", { name: "no" })
        .check();
      expect(await page.getByLabel("Answered by").inputValue()).toBe("K. L.");
      await press(page, "Keep the answers");
      await page.getByText(/^Answered before the first single-leg or drop test/).waitFor();
      await look("a session begun");

      const jumps = ["both-1", "both-2", "left-1", "right-1"].map((name) => `countermovement-${name}.csv`);
      // One that is too large, first by its name, and a picture cost the others nothing.
      const beside = [join(folder, "a-large.csv"), join(folder, "b.svg")];
      writeFileSync(beside[0]!, "");
      truncateSync(beside[0]!, 65 * 1024 * 1024);
      writeFileSync(beside[1]!, "<svg></svg>");
      await page
        .getByLabel("Recordings of this session")
        .setInputFiles([...beside, ...jumps.map((name) => join(recordings, name))]);
      await page.getByText("4 recordings taken in. a-large.csv was left out: it is larger than 64 MB").waitFor();
      await page.getByText("1 picture (b.svg)").waitFor();
      await goTo(page, "Recordings");
      await goTo(page, "Sheet");
      await page.getByText("Eira Solbakk").first().waitFor();
      const download = page.waitForEvent("download");
      await press(page, "PDF");
      await (await download).path();

      await goTo(page, "Athletes");
      await page.getByLabel("Stop the session because").fill("pain 5 of 10 in the second jump");
      await page.getByLabel("The reason is").selectOption("knee");
      await press(page, "Stop the session");
      await page.getByText("Every jump test is closed today.").waitFor();
      await look("stopped");
      await press(page, "Undo");
      await page.getByLabel("Stop the session because").waitFor();

      await press(page, /^Register: limits/);
      await page.getByText("The bin is empty.").waitFor();
      await press(page, "Make a backup now");
      await page.getByText(/^Made: /).waitFor();
      const archive = page.waitForEvent("download");
      await press(page, "Take along as a file");
      expect((await archive).suggestedFilename()).toMatch(/^register-.*\.zip$/);
      await page
        .getByRole("button", { name: /^Look at the backup/ })
        .first()
        .click();
      await page.getByText(/^It holds 1 athlete, 1 session, 4 recordings/).waitFor();
      await press(page, "Check every copy");
      await page.getByText("Checked 2: nothing damaged was found.").waitFor();
      await page
        .getByText(/everything, sound$/)
        .first()
        .waitFor();
      await press(page, /^No longer there: Archive of the register/);
      await page.getByText(/was it deleted, wherever it lay\?/).waitFor();
      await look("the register's settings");
      await press(page, "Keep it in the list");
      const chosen = page.getByRole("textbox", { name: "Passphrase", exact: true });
      await chosen.fill("12345678");
      await page.getByRole("status").getByText("is among those that are tried first").waitFor();
      await page.getByRole("textbox", { name: "The same again", exact: true }).fill("12345678");
      await press(page, "Set the passphrase");
      await page.getByRole("alert").getByText("is among those that are tried first").waitFor();
      await look("a weak passphrase");
      await chosen.fill(strongPassphrase);
      await page.getByRole("status").getByText("Guessing this passphrase would take long.").waitFor();
      await page.getByRole("textbox", { name: "The same again", exact: true }).fill(strongPassphrase);
      await press(page, "Set the passphrase");
      await press(page, "Lock now");
      await page.getByRole("heading", { name: "The register is locked" }).waitFor();
      expect(await page.textContent("body")).not.toContain("Solbakk");
      await look("locked");
      await page.getByRole("textbox", { name: "Passphrase" }).fill(strongPassphrase);
      await page.keyboard.press("Enter");
      await page.getByRole("heading", { name: /Eira Solbakk/ }).waitFor();

      await press(page, "Move Eira Solbakk to the bin");
      await page.getByText("0 athletes").waitFor();
      await press(page, /^Register: limits/);
      await press(page, /^Erase for good: Athlete GH-30/);
      await page.getByText(/will be gone from the register/).waitFor();
      await page
        .getByRole("dialog")
        .getByText(/handed over as register-/)
        .waitFor();
      await look("erasing");
      await press(page, "Erase for good");
      const certificate = page.getByRole("dialog", { name: /^Certificate of erasure: Athlete GH-30/ });
      await certificate.getByText(/^Looked for, byte by byte/).waitFor();
      expect(await certificate.getByText("Found where it should not be").count()).toBe(0);
      await look("the certificate");
      await page.emulateMedia({ media: "print" });
      expect(await page.getByRole("navigation", { name: "Areas" }).isVisible()).toBe(false);
      expect(await certificate.getByText(/^Looked for, byte by byte/).isVisible()).toBe(true);
      await page.emulateMedia({ media: "screen" });
      await press(page, "Close the certificate");
      await page.getByText("The bin is empty.").waitFor();

      expect(faults).toEqual([]);
      expect(problems).toEqual([]);
      expect(requests.filter((address) => !address.startsWith(`${origin}/`) && !/^(blob|data):/.test(address))).toEqual(
        [],
      );
      const attempts = attemptsIn(log());
      // Locking ends the worker's thread; the one after it is guarded, too.
      const guarded = attempts.filter(({ what }) => what === "guarded").map(({ thread }) => thread);
      expect(guarded).toEqual(["main", "worker", "worker"]);
      const others = attempts.filter(({ what }) => what !== "guarded");
      // Listening to an address looks it up, which for an address written in figures asks nobody.
      expect(others.map(({ thread, what, to }) => `${thread}: ${what} ${to}`)).toEqual([
        "main: listen 127.0.0.1",
        "main: name 127.0.0.1",
      ]);
      await context.close();
    },
    wholeMilliseconds,
  );
});
