import { plannedTestName } from "../../core/protocol/added-tests.ts";
import { protocolTestName } from "../../core/protocol/progress-words.ts";
import type { Protocol, ProtocolTest } from "../../core/stated/protocol-schema.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.protocols;

/** What a protocol asks for: tests with their trials, landings and rest, what is not done yet, and when to stop. */
export function ProtocolTable({ protocol }: { readonly protocol: Protocol }) {
  const { tests, mayAdd = [], notYet, stopRules, notes = [] } = protocol;
  return (
    <div className="protocol">
      {tests.length === 0 ? <p>{prose.noJumpIsTested}</p> : <PlannedTests tests={tests} />}
      {[...mayAdd.map(addableWords), landingsWords(protocol), restWords(protocol), ...notes]
        .filter((sentence) => sentence !== "")
        .map((sentence) => (
          <p key={sentence} className="muted">
            {sentence}
          </p>
        ))}
      {notYet.length > 0 && (
        <>
          <h3 className="small-title">{prose.notDoneYet}</h3>
          <ul>
            {notYet.map((entry) => (
              <li key={`${entry.test} ${entry.legs}`}>
                {sentenceCase(protocolTestName(entry))} <span className="muted">({entry.reason})</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <h3 className="small-title">{prose.stopRules}</h3>
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
      <caption className="visually-hidden">{prose.testsOfTheProtocol}</caption>
      <thead>
        <tr>
          <th scope="col">{prose.inThisOrder}</th>
          <th scope="col" className="number">
            {prose.validTrialsWanted}
          </th>
          <th scope="col" className="number">
            {prose.mostAttempts}
          </th>
          <th scope="col" className="number">
            {prose.mostPracticeJumps}
          </th>
        </tr>
      </thead>
      <tbody>
        {tests.map((entry) => (
          <tr key={`${entry.test} ${entry.legs} ${entry.dropHeightMetres ?? ""}`}>
            <td>
              {sentenceCase(plannedTestName(entry))}
              {entry.perLeadingLeg !== undefined && (
                <span className="muted">{prose.eachLegLeading(entry.perLeadingLeg)}</span>
              )}
              {entry.addedBy !== undefined && <span className="muted">{prose.addedBy(entry.addedBy)}</span>}
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
      {value ?? prose.notSaid}
      {value !== undefined && entry.legs === "single" && entry.only === undefined && (
        <span className="unit"> {prose.eachLeg}</span>
      )}
    </td>
  );
}

function addableWords(entry: ProtocolTest): string {
  const { trials, mostAttempts, practice = 0 } = entry;
  return prose.mayAdd(plannedTestName(entry), trials, mostAttempts, practice);
}

function landingsWords({ landingsADay }: Protocol): string {
  if (landingsADay === undefined) return "";
  const { twoLeg, perLeg } = landingsADay;
  return prose.mostLandings(twoLeg, perLeg);
}

function restWords({ rest }: Protocol): string {
  if (rest === undefined) return "";
  const { betweenTestsSeconds, betweenJumpsSeconds: between } = rest;
  return prose.rest(between.least, between.most, betweenTestsSeconds);
}
