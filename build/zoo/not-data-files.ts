import { deflateSync } from "node:zlib";
import type { ZooFile } from "./zoo-file.ts";

const letter = `Dear colleague,

thank you for the 24 recordings of 17 January. Three of them, numbers 4, 9 and 11, break off
before the landing; the other 21 look complete. The athlete of recording 9 weighs 68.5 kg.

With kind regards
`;

const page = `<!doctype html>
<html><head><title>Results</title></head>
<body><table><tr><th>Jump</th><th>Height</th></tr>
<tr><td>1</td><td>0.281</td></tr>
<tr><td>2</td><td>0.274</td></tr>
</table></body></html>
`;

const results = JSON.stringify(
  {
    trials: [
      { file: "jump-1.csv", jumpHeightMetres: 0.281, findings: [] },
      { file: "jump-2.csv", jumpHeightMetres: 0.274, findings: ["weighing-short"] },
    ],
  },
  null,
  2,
);

const resultTable = `file,test,limb,measure,value,unit,uncertainty,status
jump-1.csv,countermovementJump,both,Jump height,0.281,m,0.004,measured
jump-1.csv,countermovementJump,both,Body mass,68.1,kg,0.2,measured
jump-2.csv,countermovementJump,both,Jump height,0.274,m,0.004,measured
jump-2.csv,countermovementJump,both,Body mass,,kg,,not measured
`;

/** The beginning of a picture: its mark, its size, and noise. */
function picture(): Uint8Array {
  const noise = Uint8Array.from({ length: 3000 }, (_, index) => (index * index * 31 + index * 7) & 255);
  const header = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0, 0, 1, 0];
  return Uint8Array.from([...header, ...noise]);
}

function binary(): Uint8Array {
  const bytes = new Uint8Array(4 * 1000);
  const view = new DataView(bytes.buffer);
  for (let index = 0; index < 1000; index++) view.setFloat32(4 * index, 300 + (index % 40) * 0.5, true);
  return bytes;
}

function refused(name: string, content: string | Uint8Array, code = "not-data"): ZooFile {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  const expected = { findings: [`${code}:refusal`], statesCount: false, sampleRows: [], plates: [] };
  return { name, bytes, expected: { outcome: "refused", ...expected } };
}

/** Files that are no recordings. */
export function notDataFiles(): readonly ZooFile[] {
  return [
    refused("letter.txt", letter),
    refused("page.html", page),
    refused("results.json", results),
    refused("results.csv", resultTable),
    refused("picture.png", picture()),
    refused("floats.bin", binary()),
    refused("packed.gz", Uint8Array.from([0x1f, 0x8b, 8, 0, ...deflateSync(Buffer.from(letter.repeat(4)))])),
    refused("empty.csv", "", "empty"),
    refused("blanks-only.txt", " \n\t\n\r\n   \n", "empty"),
    refused("mark-only.txt", "\ufeff", "empty"),
    refused("one-line.txt", "0.000,310.25,330.50"),
    refused("one-row.csv", "time (s),left (N),right (N)\n0.000,310.25,330.50\n"),
    refused("names-only.csv", "time (s),left (N),right (N)\n"),
    refused("mark-of-c3d-alone.c3d", Uint8Array.from([2, 0x50, ...new Uint8Array(300)]), "truncated"),
  ];
}
