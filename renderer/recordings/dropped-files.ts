import { recordingByteLimit, tooLargeSentence } from "../../core/recording/size-limit.ts";

/** A file a person picked, with its path relative to what was picked, forward slashes. */
export interface PickedFile {
  readonly path: string;
  readonly read: () => Promise<Uint8Array>;
}

/** Files chosen by a dialog: inside a chosen folder with their path, else with their name. */
export function chosenFiles(files: Iterable<File>): readonly PickedFile[] {
  return inOrder([...files].map((file) => pickedFile(file.webkitRelativePath || file.name, file)));
}

/** Files dropped on the page, folders walked through. Must be called while the drop is being handled. */
export async function droppedFiles(items: Iterable<DataTransferItem>): Promise<readonly PickedFile[]> {
  const entries = [...items].flatMap((item) => item.webkitGetAsEntry() ?? []);
  const walked = await Promise.all(entries.map(walk));
  return inOrder(walked.flat());
}

async function walk(entry: FileSystemEntry): Promise<readonly PickedFile[]> {
  const path = entry.fullPath.replace(/^\/+/, "");
  if (isFile(entry)) {
    return [
      {
        path,
        read: async () => bytesOf(await new Promise<File>((resolve, reject) => entry.file(resolve, reject))),
      },
    ];
  }
  const inside = await entriesIn(entry as FileSystemDirectoryEntry);
  return (await Promise.all(inside.map(walk))).flat();
}

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}

/** Browsers hand out a folder's entries in portions until an empty one comes. */
async function entriesIn(folder: FileSystemDirectoryEntry): Promise<readonly FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const portion = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (portion.length === 0) return all;
    all.push(...portion);
  }
}

function pickedFile(path: string, file: File): PickedFile {
  return { path, read: () => bytesOf(file) };
}

/** A file that is larger than one recording may be; it was not read. */
export class FileTooLarge extends Error {
  override readonly name = "FileTooLarge";
}

async function bytesOf(file: File): Promise<Uint8Array> {
  if (file.size > recordingByteLimit) throw new FileTooLarge(tooLargeSentence(file.name));
  return new Uint8Array(await file.arrayBuffer());
}

/** By path, a folder's session.json first, so that its files are looked at with what is known about them. */
function inOrder(files: readonly PickedFile[]): readonly PickedFile[] {
  const key = ({ path }: PickedFile) => path.replace(/(^|\/)session\.json$/, "$1 session.json");
  return [...files].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}
