import type { MadeFile } from "../../electron/boundary/made-file.ts";

/** Hands a file to the browser to be saved under its name. */
export function saveFile({ name, mediaType, bytes }: MadeFile): void {
  const address = URL.createObjectURL(new Blob([Uint8Array.from(bytes)], { type: mediaType }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // the browser has taken the address over by the next turn of its clock
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
