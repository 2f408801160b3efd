import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** The text of every page of a PDF, white space folded. */
export async function pdfText(bytes: Uint8Array): Promise<readonly string[]> {
  const document = await getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const content = await (await document.getPage(number)).getTextContent();
    pages.push(
      content.items
        .map((item) => ("str" in item ? item.str : ""))
        .join(" ")
        .replace(/\s+/g, " "),
    );
  }
  return pages;
}
