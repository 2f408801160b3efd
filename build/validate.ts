import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { validationDocument, validationRows } from "../tests/published/validation-table.ts";

/**
 * Prints the table of outside checks and writes it to `tests/published/VALIDATION.md`: `npm run validate`. The same
 * bytes on every run. Ends with 1 where a check differs.
 */
const rows = validationRows();
const document = validationDocument(rows);
writeFileSync(fileURLToPath(new URL("../tests/published/VALIDATION.md", import.meta.url)), document);
process.stdout.write(document);
process.exitCode = rows.every((row) => row.verdict === "agrees") ? 0 : 1;
