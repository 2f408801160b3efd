import type { Crew, CrewMember } from "./crew.ts";

/** Most files handed to a member at a time: enough to keep it busy, few enough that the last ones end together. */
const mostFilesAtATime = 8;
/** Everybody gets this many portions at least, where there are as many files: a few files are shared out one by one. */
const portionsEach = 4;

/**
 * Shares work out in small portions: everybody takes the next one when done with the last. Answers come back in the
 * order of the work, with who did what.
 * @param wanted who should do an item again; items without such a member go to whoever is free
 */
export async function share<Item, Answer extends { readonly path: string }>(
  crew: Crew,
  work: readonly Item[],
  ask: (member: CrewMember, portion: readonly Item[]) => Promise<readonly Answer[]>,
  wanted?: (item: Item) => CrewMember | undefined,
): Promise<{ readonly items: readonly Answer[]; readonly doneBy: ReadonlyMap<string, CrewMember> }> {
  const queues = queuesOf(crew, work, wanted);
  const answers = new Map<number, readonly Answer[]>();
  const doneBy = new Map<string, CrewMember>();
  await Promise.all(
    crew.members.map(async (member, position) => {
      const queue = queues[position] ?? [];
      for (let portion = queue.shift(); portion !== undefined; portion = queue.shift()) {
        const answer = await ask(member, portion.items);
        for (const { path } of answer) doneBy.set(path, member);
        answers.set(portion.at, answer);
      }
    }),
  );
  const inOrder = [...answers].toSorted(([one], [other]) => one - other);
  return { items: inOrder.flatMap(([, answer]) => answer), doneBy };
}

interface Portion<Item> {
  readonly at: number;
  readonly items: readonly Item[];
}

/** One queue that everybody takes from, or one for each member where items want to go to theirs. */
function queuesOf<Item>(
  crew: Crew,
  work: readonly Item[],
  wanted: ((item: Item) => CrewMember | undefined) | undefined,
): readonly Portion<Item>[][] {
  const fair = Math.ceil(work.length / (portionsEach * crew.members.length));
  const filesAtATime = Math.max(1, Math.min(mostFilesAtATime, fair));
  const portions = (items: readonly { readonly item: Item; readonly at: number }[]): Portion<Item>[] =>
    Array.from({ length: Math.ceil(items.length / filesAtATime) }, (_, index) => {
      const some = items.slice(index * filesAtATime, (index + 1) * filesAtATime);
      return { at: some[0]?.at ?? 0, items: some.map(({ item }) => item) };
    });
  const all = work.map((item, at) => ({ item, at }));
  if (wanted === undefined) {
    const shared = portions(all);
    return crew.members.map(() => shared);
  }
  return crew.members.map((member) => portions(all.filter(({ item }) => wanted(item) === member)));
}
