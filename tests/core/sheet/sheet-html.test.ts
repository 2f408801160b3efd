import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { buildSheet } from "../../../core/sheet/build-sheet.ts";
import type { SheetDocument } from "../../../core/sheet/document.ts";
import { escapeHtml, sheetHtml } from "../../../core/sheet/sheet-html.ts";
import {
  bothInvolvedSession,
  exampleDescription,
  exampleSession,
  exampleTrial,
  healthySession,
} from "./example-session.ts";
import { sheetTexts } from "./sheet-text.ts";

const sheet = buildSheet(exampleSession(), defaultSettings);
const html = sheetHtml(sheet);

/** The texts of a file without its tags and style, white space as a reader sees it. */
function visibleText(page: string): string {
  return page
    .replace(/<style>[\s\S]*?<\/style>/, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&amp;/g, "&")
    .replaceAll("\u2060", "")
    .replace(/[ \n]+/g, " ");
}

describe("the HTML sheet", () => {
  test("shows every text of the document", () => {
    const text = visibleText(html);
    for (const part of sheetTexts(sheet).flatMap((each) => each.split(" | "))) {
      // Names and values of facts stand without their colon.
      const shown = text.includes(part) || text.includes(part.replace(": ", " "));
      expect(shown, part).toBe(true);
    }
  });

  test("is one file: no script, no handler, nothing to load, and a policy that forbids it", () => {
    expect(html).toContain("default-src 'none'; style-src 'unsafe-inline'");
    expect(html).not.toMatch(/<script|<link|<img|<iframe|<object|@import|url\(|src=|href=|\son\w+=|javascript:/i);
    expect(html.match(/https?:\/\/[^"]*/g)?.filter((url) => url !== "http://www.w3.org/2000/svg") ?? []).toEqual([]);
  });

  test("escapes whatever came from outside, in text, attributes and style", () => {
    const attack = `"><script>alert(1)</script>'&</style><b>`;
    const session = exampleSession({
      description: { ...exampleDescription, athlete: { code: attack, name: attack }, milestone: attack, note: attack },
      criteriaSet: { ...exampleSession().criteriaSet, name: attack },
      trials: [exampleTrial(`${attack}.csv`, "both", 0.3, { excluded: { reason: attack } })],
    });
    const page = sheetHtml(buildSheet(session, defaultSettings));
    expect(page).not.toContain("<script>");
    expect(page).not.toContain("<b>");
    expect(page.match(/<\/style>/g)?.length).toBe(1);
    expect(visibleText(page)).toContain(attack);
    expect(escapeHtml(attack)).toBe("&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;&#39;&amp;&lt;/style&gt;&lt;b&gt;");
  });

  test("names its language, has one first heading and captions and scopes for every table", () => {
    expect(html).toMatch(/^<!doctype html>\n<html lang="en">/);
    expect(html.match(/<h1>/g)?.length).toBe(1);
    const tables = html.match(/<table>/g)?.length ?? 0;
    expect(tables).toBe(sheet.blocks.filter((block) => block.kind === "table").length);
    expect(html.match(/<caption[ >]/g)?.length).toBe(tables);
    expect(html.match(/<th(?! scope="(?:row|col)")[ >]/g)).toBeNull();
  });

  test("draws each status with its word beside it and each symmetry line with a text alternative", () => {
    expect(html).toMatch(/<span class="status"><svg [^>]*aria-hidden="true">.*?<\/svg> not met<\/span>/);
    const lines = sheet.blocks.flatMap((block) => (block.kind === "table" ? block.rows.filter((row) => row.line) : []));
    expect(html.match(/role="img" aria-label="Index [^"]+"/g)?.length).toBe(lines.length);
    expect(lines.length).toBeGreaterThan(0);
  });

  test("closes every element it opens", () => {
    for (const page of [
      html,
      sheetHtml(buildSheet(healthySession(), defaultSettings)),
      sheetHtml(buildSheet(bothInvolvedSession(), defaultSettings)),
    ]) {
      const open: string[] = [];
      for (const [tag, closing, name = ""] of page.matchAll(/<(\/?)([a-z][a-z0-9]*)[^>]*?>/g)) {
        if (tag.endsWith("/>") || name === "meta") continue;
        if (closing === "/") expect(open.pop()).toBe(name);
        else open.push(name);
      }
      expect(open).toEqual([]);
    }
  });

  test("keeps colours for the limbs apart from a healthy pair", () => {
    expect(html).toContain('class="end involved"');
    const healthy = sheetHtml(buildSheet(healthySession(), defaultSettings));
    expect(healthy).not.toMatch(/class="[^"]*involved"/);
    expect(healthy.replace(/<style>[\s\S]*?<\/style>/, "")).not.toContain("var(--involved)");
  });

  test("starts a new page at each break and says simulated on every printed one", () => {
    expect(html.match(/<section class="page">/g)?.length).toBe(2);
    expect(html).toContain('@top-left { content: "Simulated recordings');
    const real: SheetDocument = { ...sheet, banner: "" };
    expect(sheetHtml(real)).not.toContain('@top-left { content: "Sim');
  });
});
