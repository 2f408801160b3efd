import { Button } from "@mantine/core";
import type { RecordKey, StoredRecord } from "../../electron/register/record-tables.ts";
import { dateWords } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.athleteRecord;

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
          {prose.consent}
        </h2>
        {consents.length === 0 && <p className="muted">{prose.nobodysConsent}</p>}
        {canWrite && (
          <Button size="xs" variant="default" onClick={onAdd}>
            {prose.addConsent}
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
                  {reader}: {sheet}, {given ? prose.given : prose.notGiven} {dateWords(date)}
                  {recordedBy !== undefined && <span className="muted">{prose.recordedBy(recordedBy)}</span>}
                </span>
                {canWrite && (
                  <>
                    <Button
                      size="xs"
                      variant="default"
                      aria-label={prose.changeConsentFor(reader)}
                      onClick={() => onEdit(consent.id)}
                    >
                      {prose.change}
                    </Button>
                    <button
                      type="button"
                      className="text-button"
                      aria-label={prose.moveConsentToBin(reader)}
                      onClick={() => onBin(consent)}
                    >
                      {prose.toTheBin}
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
