import { plannedTestName } from "../../core/protocol/added-tests.ts";
import { protocolTestName } from "../../core/protocol/progress-words.ts";
import type { Protocol, ProtocolTest } from "../../core/stated/protocol-schema.ts";
import { sentenceCase } from "../shell/words.ts";

/** What a protocol asks for: tests with their trials, landings and rest, what is not done yet, and when to stop. */
export function ProtocolTable({ protocol }: { readonly protocol: Protocol }) {
  const { tests, mayAdd = [], notYet, stopRules, notes = [] } = protocol;
  return (
    <div className="protocol">
      {tests.length === 0 ? <p>No jump is tested at this stage.</p> : <PlannedTests tests={tests} />}
      {[...mayAdd.map(addableWords), landingsWords(protocol), restWords(protocol), ...notes]
        .filter((sentence) => sentence !== "")
        .map((sentence) => (
          <p key={sentence} className="muted">
            {sentence}
          </p>
        ))}
      {notYet.length > 0 && (
        <>
          <h3 className="small-title">Not done yet</h3>
          <ul>
            {notYet.map((entry) => (
              <li key={`${entry.test} ${entry.legs}`}>
                {sentenceCase(protocolTestName(entry))} <span className="muted">({entry.reason})</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <h3 className="small-title">Stop rules</h3>
      <ul>
        {stopRules.map((rule) => (
          <li key={rule}>{rule}</li>
        ))}
      </ul>
    </div>
  );
}

function PlannedTests({ tests }: Pick<Protocol, "tests">) {
  return (
    <table className="plain-table">
      <caption className="visually-hidden">Tests of the protocol</caption>
      <thead>
        <tr>
          <th scope="col">In this order</th>
          <th scope="col" className="number">
            Valid trials wanted
          </th>
          <th scope="col" className="number">
            Most attempts
          </th>
          <th scope="col" className="number">
            Most practice jumps
          </th>
        </tr>
      </thead>
      <tbody>
        {tests.map((entry) => (
          <tr key={`${entry.test} ${entry.legs} ${entry.dropHeightMetres ?? ""}`}>
            <td>
              {sentenceCase(plannedTestName(entry))}
              {entry.perLeadingLeg !== undefined && (
                <span className="muted">, {entry.perLeadingLeg} with each leg leading</span>
              )}
              {entry.addedBy !== undefined && <span className="muted">, added by {entry.addedBy}</span>}
            </td>
            <Count value={entry.trials} entry={entry} />
            <Count value={entry.mostAttempts} entry={entry} />
            <Count value={entry.practice} entry={entry} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Count({ value, entry }: { readonly value: number | undefined; readonly entry: ProtocolTest }) {
  return (
    <td className="number">
      {value ?? "not said"}
      {value !== undefined && entry.legs === "single" && entry.only === undefined && (
        <span className="unit"> each leg</span>
      )}
    </td>
  );
}

function addableWords(entry: ProtocolTest): string {
  const { trials, mostAttempts, practice = 0 } = entry;
  return `A named treating clinician may add the ${plannedTestName(entry)}: ${trials} wanted, ${mostAttempts} at most, ${practice} practice.`;
}

function landingsWords({ landingsADay }: Protocol): string {
  if (landingsADay === undefined) return "";
  const { twoLeg, perLeg } = landingsADay;
  return `Most landings a day, practice included: ${twoLeg} on two legs, ${perLeg} on each leg alone. A drop jump is two.`;
}

function restWords({ rest }: Protocol): string {
  if (rest === undefined) return "";
  const { betweenTestsSeconds, betweenJumpsSeconds: between } = rest;
  return `Rest: ${between.least} to ${between.most} s between jumps, at least ${betweenTestsSeconds} s between tests.`;
}
