import type { SheetBlock, SheetCell } from "../../core/sheet/document.ts";
import { SymmetryLinePicture } from "../charts/symmetry-line-picture.tsx";
import { StatusWord } from "../shell/status-word.tsx";

type TableBlock = Extract<SheetBlock, { readonly kind: "table" }>;

/** A table of the sheet; symmetry lines stand in a column of their own in front of the last one. */
export function SheetTable({ table }: { readonly table: TableBlock }) {
  const { caption, captionUnseen, columns, rows, axis } = table;
  const last = columns.length - 1;
  return (
    <table className="sheet-table">
      <caption className={captionUnseen === true ? "visually-hidden" : undefined}>{caption}</caption>
      <thead>
        <tr>
          {columns.flatMap((column, index) => [
            ...(axis !== undefined && index === last
              ? [
                  <th key="axis" scope="col" className="sheet-axis">
                    {axis.label}
                  </th>,
                ]
              : []),
            <th
              key={column.text}
              scope="col"
              className={`${cellClass(column.align, column.limb)}${holdsStatus(table, index) ? " sheet-narrow" : ""}`}
            >
              {column.text}
            </th>,
          ])}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no identity beside their place in the document
          <tr key={at}>
            {row.cells.flatMap((cell, index) => [
              ...(axis !== undefined && index === last
                ? [
                    <td key="axis" className="sheet-axis">
                      {row.line !== undefined && <SymmetryLinePicture line={row.line} axis={axis} />}
                    </td>,
                  ]
                : []),
              // biome-ignore lint/suspicious/noArrayIndexKey: a cell is known by its column
              <td key={index} className={cellClass(cell.align, cell.limb)}>
                <CellWords cell={cell} />
              </td>,
            ])}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Words that stand behind a mark are not broken, so their column takes no more than they need. */
function holdsStatus({ rows }: TableBlock, column: number): boolean {
  return rows.some((row) => row.cells[column]?.status !== undefined);
}

function CellWords({ cell }: { readonly cell: SheetCell }) {
  const words = cell.status === undefined ? cell.text : <StatusWord status={cell.status} words={cell.text} />;
  return (
    <>
      {cell.emphasis === "strong" ? <strong>{words}</strong> : words}
      {cell.muted !== undefined && cell.muted !== "" && (
        <span className={cell.status === undefined ? "muted" : "muted sheet-behind"}> {cell.muted}</span>
      )}
    </>
  );
}

function cellClass(align: "start" | "end", limb: SheetCell["limb"]): string {
  const side = align === "end" ? "sheet-end" : "";
  return limb === undefined ? side : `${side} limb-${limb === "both" ? "total" : limb}`;
}
