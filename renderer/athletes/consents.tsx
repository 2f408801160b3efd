import { Button } from "@mantine/core";
import type { RecordKey, StoredRecord } from "../../electron/register/record-tables.ts";
import { dateWords } from "../shell/words.ts";

interface ConsentsProps {
  readonly consents: readonly StoredRecord<"consents">[];
  readonly canWrite: boolean;
  readonly onAdd: () => void;
  readonly onEdit: (id: string) => void;
  readonly onBin: (key: RecordKey) => void;
}

/** Who may read which sheet. */
export function Consents({ consents, canWrite, onAdd, onEdit, onBin }: ConsentsProps) {
  return (
    <section className="panel panel-padded session-statements" aria-labelledby="consents-title">
      <div className="session-summary">
        <h2 id="consents-title" className="panel-title">
          Consent
        </h2>
        {consents.length === 0 && <p className="muted">Nobody's consent is recorded: the sheet goes to nobody else.</p>}
        {canWrite && (
          <Button size="xs" variant="default" onClick={onAdd}>
            Add a consent
          </Button>
        )}
      </div>
      {consents.length > 0 && (
        <ul className="caution-moments">
          {consents.map((consent) => {
            const { reader, sheet, given, date, recordedBy } = consent.content;
            return (
              <li key={consent.id}>
                <span>
                  {reader}: {sheet}, {given ? "given" : "not given"} {dateWords(date)}
                  {recordedBy !== undefined && <span className="muted">, recorded by {recordedBy}</span>}
                </span>
                {canWrite && (
                  <>
                    <Button
                      size="xs"
                      variant="default"
                      aria-label={`Change the consent for ${reader}`}
                      onClick={() => onEdit(consent.id)}
                    >
                      Change
                    </Button>
                    <button
                      type="button"
                      className="text-button"
                      aria-label={`Move the consent for ${reader} to the bin`}
                      onClick={() => onBin(consent)}
                    >
                      To the bin
                    </button>
                  </>
                )}
              </li>
            );
          })}
        </ul>
      )}
    </section>
  );
}
