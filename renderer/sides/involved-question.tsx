import { Button } from "@mantine/core";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import { useWorkspace } from "../shell/workspace.tsx";
import { words } from "../words/words.ts";

const prose = words.screens.sides;

const answers: readonly (readonly [side: InvolvedSide, words: string])[] = [
  ["left", prose.left],
  ["right", prose.right],
  ["both", prose.bothKnees],
  ["none", prose.nobodyIsInjured],
];

/** Asks which side is involved, where nobody has said it: sides are not compared before. */
export function InvolvedQuestion({ folder }: { readonly folder: string }) {
  const { apply } = useWorkspace();
  return (
    <section className="caution finding plates-question" aria-label={prose.whichSideIsInvolved}>
      <p>{prose.nobodyHasSaid}</p>
      <div className="plates-answers">
        {answers.map(([involved, words]) => (
          <Button
            key={involved}
            size="xs"
            variant="default"
            onClick={() => void apply("session.change", { folder, change: { involved } })}
          >
            {words}
          </Button>
        ))}
      </div>
    </section>
  );
}
