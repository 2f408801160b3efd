import type { Round } from "../../electron/register/killing/kill-rounds.ts";

/** What many kills came to, by operation and by the step they fell at. */
export function tableOfKills(rounds: readonly Round[], seed: number): string {
  const operations = [...new Set(rounds.map(({ operation }) => operation))].toSorted();
  const faulty = rounds.filter(({ faults }) => faults.length > 0);
  return `# A register's program killed ${rounds.length} times

Made by \`node tests/bench/register-kill.ts ${rounds.length} ${seed}\`; the checks are in \`tests/electron/register/killing/\`. The program
under test does one operation on a register of its own and is ended by SIGKILL: *between steps* right before or after a
commit, a rename, an emptied log or another step (by its own hand, or staying there until it is killed), *at any moment*
after a random time at work, or *when done*. Of some the next opening, which finishes what was broken off, was killed as well
(*again*). Then is looked, before anything is opened, whether anything personal lies in the clear beside a register under a
passphrase, and which one passphrase opens it; after opening it, whether it verifies (with its seal), holds everything that
was acknowledged, has finished what was broken off and left no file over, whether every kept backup and every copy elsewhere
opens under the passphrase it should be under and verifies, and whether a person who was erased is nowhere in any file.

A kill of the program is not a stop of the machine: what a disk has not written yet is not lost by it. That every commit
waits for the disk is held by the test "every commit waits for the disk" alone.

| operation | rounds | between steps | at any moment | when done | again | faults |
|---|--:|--:|--:|--:|--:|--:|
${operations
  .map((operation) =>
    row(
      operation,
      rounds.filter((each) => each.operation === operation),
    ),
  )
  .join("\n")}
${row("**all**", rounds)}

${faulty.map(({ round, operation, step, faults }) => `- Round ${round}, ${operation}, at "${step}": ${faults.join("; ")}\n`).join("")}
## Where they fell

| step | the operation | its finishing |
|---|--:|--:|
${stepRows(rounds).join("\n")}
`;
}

function row(name: string, rounds: readonly Round[]): string {
  const count = (is: (round: Round) => boolean) => rounds.filter(is).length;
  const cells = [
    rounds.length,
    count(({ step }) => step !== undefined),
    count(({ step, wasDone }) => step === undefined && !wasDone),
    count(({ wasDone }) => wasDone),
    count(({ again }) => again !== undefined),
    count(({ faults }) => faults.length > 0),
  ];
  return `| ${name} | ${cells.join(" | ")} |`;
}

function stepRows(rounds: readonly Round[]): readonly string[] {
  const steps = new Set(rounds.flatMap(({ step, again }) => [step, again].filter((each) => each !== undefined)));
  return [...steps].toSorted().map((step) => {
    const [first, second] = [rounds.filter((each) => each.step === step), rounds.filter((each) => each.again === step)];
    return `| ${step} | ${first.length} | ${second.length} |`;
  });
}
