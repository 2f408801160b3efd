import { Button } from "@mantine/core";
import type { InvolvedSide } from "../../core/ground/limb.ts";
import { useWorkspace } from "../shell/workspace.tsx";

const answers: readonly (readonly [side: InvolvedSide, words: string])[] = [
  ["left", "Left"],
  ["right", "Right"],
  ["both", "Both knees"],
  ["none", "Nobody is injured"],
];

/** Asks which side is involved, where nobody has said it: sides are not compared before. */
export function InvolvedQuestion({ folder }: { readonly folder: string }) {
  const { apply } = useWorkspace();
  return (
    <section className="caution finding plates-question" aria-label="Which side is involved?">
      <p>Which side is involved? Nobody has said it, so the sides are not compared and no criterion has a status.</p>
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
