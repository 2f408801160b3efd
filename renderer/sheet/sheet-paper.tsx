import type { SheetBlock, SheetDocument } from "../../core/sheet/document.ts";
import { SheetTable } from "./sheet-table.tsx";

/** The testing sheet on paper, drawn from its one document; the words and their order are the document's. */
export function SheetPaper({ sheet }: { readonly sheet: SheetDocument }) {
  return (
    <article className="sheet-paper" lang={sheet.language} aria-label={sheet.title}>
      {sheet.banner !== "" && <p className="sheet-banner caution">{sheet.banner}</p>}
      <h2 className="sheet-title">{sheet.title}</h2>
      <p className="muted">{sheet.subtitle}</p>
      {sheet.blocks.map((block, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: blocks have no identity beside their place in the document
        <Block key={index} block={block} />
      ))}
      <footer className="sheet-footer muted">{sheet.footer}</footer>
    </article>
  );
}

function Block({ block }: { readonly block: SheetBlock }) {
  switch (block.kind) {
    case "heading":
      // one level down: the sheet's own title stands under the area's
      return block.level === 2 ? <h3>{block.text}</h3> : <h4>{block.text}</h4>;
    case "paragraph":
      return <p className={paragraphClass(block.tone)}>{block.text}</p>;
    case "list":
      return (
        <ul className="sheet-list">
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case "facts":
      return (
        <dl className="sheet-facts">
          {block.items.map(({ name, value, wide }) => (
            <div key={name} className={wide === true ? "sheet-wide" : undefined}>
              <dt className="muted">{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      );
    case "table":
      return <SheetTable table={block} />;
    case "write-in":
      return (
        <div className="sheet-write-in">
          {block.items.map(({ name, lines }) => (
            <div key={name} className={lines > 1 ? "sheet-tall" : undefined}>
              <p className="muted">{name}</p>
              {Array.from({ length: lines }, (_, line) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: empty lines differ by their place alone
                <div key={line} className="sheet-line" />
              ))}
            </div>
          ))}
        </div>
      );
    case "page-break":
      return <hr className="sheet-page-break" />;
  }
}

function paragraphClass(tone: "plain" | "muted" | "caution"): string | undefined {
  if (tone === "caution") return "caution finding";
  return tone === "muted" ? "muted" : undefined;
}
