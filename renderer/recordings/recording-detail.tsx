import type { RecordingView } from "../../electron/host-api.ts";
import { bySeverity, FindingsList } from "../shell/findings-list.tsx";
import { AnswersForm } from "./answers-form.tsx";
import { formWords, originWords, outcomeWords, roleWords } from "./reading-words.ts";
import { TakeAsRecognised } from "./take-as-recognised.tsx";

interface RecordingDetailProps {
  readonly folder: string;
  readonly view: RecordingView;
  /** Every file of the session that asks for something. */
  readonly asking: readonly string[];
}

/** One file: what was found, how its columns were read and why, its first lines, and what may be stated about it. */
export function RecordingDetail({ folder, view, asking }: RecordingDetailProps) {
  return (
    <section className="panel panel-padded recording-detail" aria-labelledby="recording-title">
      <h2 id="recording-title" className="panel-title">
        {view.file}
      </h2>
      <p className="muted">
        {outcomeWords(view.outcome)} · {sizeWords(view.byteLength)}
        {view.reading !== undefined && ` · ${formWords(view.reading)} · ${originWords(view.reading)}`}
      </p>
      <FindingsList findings={bySeverity(view.findings)} />
      <TakeAsRecognised folder={folder} file={view.file} said={view.findings} />
      {view.reading !== undefined && (
        <>
          <h3>{view.reading.kind === "c3d" ? "Force platforms" : "Columns"}</h3>
          <table className="columns-table">
            <thead>
              <tr>
                <th scope="col" className="number">
                  No.
                </th>
                <th scope="col">Name</th>
                <th scope="col">Read as</th>
                <th scope="col">Unit</th>
                <th scope="col">Why</th>
              </tr>
            </thead>
            <tbody>
              {view.reading.columns.map((column) => (
                <tr key={column.position}>
                  <td className="number">{column.position}</td>
                  <td>{column.name === "" ? "–" : column.name}</td>
                  <td>{roleWords(column)}</td>
                  <td>{column.unit === "" ? "–" : column.unit}</td>
                  <td className="muted">{column.reason}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
      <h3 id="head-title">{view.reading?.kind === "c3d" ? "What the file holds" : "First lines"}</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls sideways, so it must be reachable by keyboard */}
      <section className="file-head" aria-labelledby="head-title" tabIndex={0}>
        <pre>{view.head === "" ? "The file is empty." : view.head}</pre>
      </section>
      <AnswersForm key={view.file} folder={folder} view={view} asking={asking} />
    </section>
  );
}

function sizeWords(bytes: number): string {
  if (bytes < 1000) return `${bytes} bytes`;
  return bytes < 1_000_000 ? `${Math.round(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}
