import type { RecordingView } from "../../electron/host-api.ts";
import { outcomeWords, readingWords } from "./reading-words.ts";

interface RecordingsTableProps {
  readonly recordings: readonly RecordingView[];
  readonly selected: string;
  readonly onSelect: (file: string) => void;
}

/** What was understood of each file, one file a row. */
export function RecordingsTable({ recordings, selected, onSelect }: RecordingsTableProps) {
  return (
    <table className="recordings-table">
      <caption className="visually-hidden">Recordings of the session and what was understood of them</caption>
      <thead>
        <tr>
          <th scope="col">File</th>
          <th scope="col">Outcome</th>
          <th scope="col">Understood as</th>
          <th scope="col" className="number">
            Trials
          </th>
        </tr>
      </thead>
      <tbody>
        {recordings.map((view) => (
          <tr key={view.file} className={view.file === selected ? "selected" : undefined}>
            <th scope="row">
              <button
                type="button"
                className="text-button file-name"
                aria-current={view.file === selected ? "true" : undefined}
                onClick={() => onSelect(view.file)}
              >
                {view.file}
              </button>
            </th>
            <td>
              <OutcomeWord view={view} />
            </td>
            <td className="muted">
              {view.reading === undefined ? "nothing was understood" : readingWords(view.reading)}
            </td>
            <td className="number">{view.trials}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The outcome; what asks for a person stands out. */
function OutcomeWord({ view }: { readonly view: RecordingView }) {
  const warnings = view.findings.filter((each) => each.severity === "warning").length;
  if (view.outcome === "understood") {
    return (
      <>
        {outcomeWords(view.outcome)}
        {warnings > 0 && <span className="muted">, {warnings === 1 ? "1 warning" : `${warnings} warnings`}</span>}
      </>
    );
  }
  return <span className="caution outcome">{outcomeWords(view.outcome)}</span>;
}
