import { createHash } from "node:crypto";
import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { layoutLimits } from "../../core/bytes/json-bounds.ts";
import { isSameShape } from "../../core/recording/same-shape.ts";
import type { Layout } from "../../core/stated/layout.ts";
import { parseLayout, writeLayout } from "../../core/stated/layout-file.ts";
import { english } from "../../core/words/english.ts";
import { findingInWords } from "../../core/words/finding-in-words.ts";
import { readUpTo } from "../bounded-json/read-up-to.ts";
import { comparePaths } from "../files/recording-names.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { diskTrouble, writeFileThrough } from "../register/file-sink.ts";

/** A saved layout that could not be used, with the reason. */
export interface UnusableLayout {
  readonly file: string;
  readonly reason: string;
}

/**
 * The saved layouts of this person, a file each in one folder that only they may read. Kept in memory as one list that
 * is never altered: a change makes a new one.
 */
export class LayoutShelf {
  readonly #folder: string;
  #layouts: readonly Layout[] = [];
  #unusable: readonly UnusableLayout[] = [];

  /** @param dataFolder made when the first layout is saved */
  constructor(dataFolder: string) {
    this.#folder = join(dataFolder, "layouts");
    this.#read();
  }

  /** In the order of their names. */
  get layouts(): readonly Layout[] {
    return this.#layouts;
  }

  /** Files in the folder that are no saved layouts. */
  get unusable(): readonly UnusableLayout[] {
    return this.#unusable;
  }

  /**
   * Saves a layout. It takes the place of one of the same name for the same shape.
   * @throws RequestRefused where the name belongs to files of another shape, or another layout is kept for this shape
   */
  save(layout: Layout): void {
    const { name, shape } = layout;
    const named = this.#layouts.find((each) => each.name === name);
    if (named !== undefined && !isSameShape(named.shape, shape)) {
      throw new RequestRefused(`A saved layout for files of another shape is called “${name}” already.`);
    }
    const other = this.#layouts.find((each) => each.name !== name && isSameShape(each.shape, shape));
    if (other !== undefined) {
      throw new RequestRefused(
        `Files of this shape have a saved layout already, “${other.name}”. Remove it, or save under its name.`,
      );
    }
    this.#write(layout);
  }

  /** @throws RequestRefused where there is no such layout, or the new name is taken */
  rename(name: string, to: string): void {
    const layout = this.#named(name);
    if (name === to) return;
    if (this.#layouts.some((each) => each.name === to)) {
      throw new RequestRefused(`Another saved layout is called “${to}”.`);
    }
    this.#write({ ...layout, name: to });
    this.remove(name);
  }

  /** @throws RequestRefused where there is no such layout */
  remove(name: string): void {
    const layout = this.#named(name);
    rmSync(this.#place(layout.name), { force: true });
    this.#read();
  }

  /**
   * Takes in a layout that was exported elsewhere.
   * @throws RequestRefused where it is no layout, or does not go with those that are here
   */
  take(bytes: Uint8Array): Layout {
    const { layout, findings } = parseLayout(bytes);
    if (layout === undefined)
      throw new RequestRefused(findings.map((each) => findingInWords(each, english).message).join(" "));
    this.save(layout);
    return layout;
  }

  /** The text of a saved layout. @throws RequestRefused where there is none of this name */
  textOf(name: string): string {
    return writeLayout(this.#named(name));
  }

  #named(name: string): Layout {
    const layout = this.#layouts.find((each) => each.name === name);
    if (layout === undefined) throw new RequestRefused(`There is no saved layout “${name}” any more.`);
    return layout;
  }

  #write(layout: Layout): void {
    try {
      mkdirSync(this.#folder, { recursive: true, mode: 0o700 });
    } catch (error) {
      throw diskTrouble(error, this.#folder) ?? error;
    }
    writeFileThrough(this.#place(layout.name), (sink) => {
      sink.write(new TextEncoder().encode(writeLayout(layout)));
      sink.end();
    });
    this.#read();
  }

  /** A name that every file system takes; the hash keeps names apart that look the same without their signs. */
  #place(name: string): string {
    const plain = name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, "-")
      .slice(0, 40);
    const hash = createHash("sha256").update(name).digest("hex").slice(0, 12);
    return join(this.#folder, `${plain}-${hash}.json`);
  }

  #read(): void {
    const layouts: Layout[] = [];
    const unusable: UnusableLayout[] = [];
    for (const file of filesIn(this.#folder)) {
      try {
        const { layout, findings } = parseLayout(readUpTo(join(this.#folder, file), layoutLimits.bytes));
        if (layout !== undefined) layouts.push(layout);
        else unusable.push({ file, reason: findings.map((each) => findingInWords(each, english).message).join(" ") });
      } catch {
        unusable.push({ file, reason: "The file could not be read." });
      }
    }
    this.#layouts = layouts.toSorted((one, other) => comparePaths(one.name, other.name));
    this.#unusable = unusable;
  }
}

/** A folder that is not there holds none; nothing was saved yet. */
function filesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith(".json") && !name.startsWith("."))
      .sort();
  } catch {
    return [];
  }
}
