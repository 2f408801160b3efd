import { type Finding, finding } from "../ground/finding.ts";
import { saysLittle } from "./layout-shape.ts";
import type { LayoutAnswers, RememberedAnswers } from "./reading-statements.ts";
import { isSameShape } from "./same-shape.ts";
import type { LayoutShape } from "./shape-schema.ts";

/** What was said once about files of a shape; a saved layout is one. */
export interface KnownShape {
  readonly name: string;
  readonly shape: LayoutShape;
  readonly answers: RememberedAnswers;
}

/** A person's answers joined with those of the saved layout that fits, if one does. */
export interface AppliedLayout {
  readonly answers: LayoutAnswers;
  /** Absent where none fits, or several that say different things do. */
  readonly layout?: KnownShape;
  readonly findings: readonly Finding[];
}

/**
 * Joins what a saved layout knows about files of this shape to what a person said about this file; the person
 * outranks the layout part by part, and columns as a whole.
 */
export function applyLayout(shape: LayoutShape, layouts: readonly KnownShape[], answers: LayoutAnswers): AppliedLayout {
  const fitting = layouts.filter((layout) => isSameShape(layout.shape, shape));
  const [layout] = fitting;
  if (layout === undefined) return { answers, findings: [] };
  const saying = new Set(fitting.map((each) => JSON.stringify(Object.entries(each.answers).sort())));
  if (saying.size > 1) {
    const warning = finding("layout-unclear/several-fit", "warning", { names: fitting.map(({ name }) => name) });
    return { answers, findings: [warning] };
  }
  return { answers: joined(layout, answers), layout, findings: saysLittle(shape) ? [littleKnown(layout)] : [] };
}

/** Columns that a person states replace all columns of the layout: they belong together. */
function joined(layout: KnownShape, answers: LayoutAnswers): LayoutAnswers {
  const { time, left, right, total, platesStated, swapPlates, ...rest } = layout.answers;
  const statesForces = [answers.left, answers.right, answers.total].some((key) => key !== undefined);
  const statesFeet = answers.platesStated === true || answers.swapPlates !== undefined;
  const forces = statesForces
    ? {}
    : {
        ...(left === undefined ? {} : { left }),
        ...(right === undefined ? {} : { right }),
        ...(total === undefined ? {} : { total }),
        ...(platesStated === undefined ? {} : { platesStated }),
        ...(swapPlates === undefined ? {} : { swapPlates }),
      };
  const provesPlates = !statesForces && !statesFeet && (platesStated === true || swapPlates !== undefined);
  return {
    ...rest,
    ...(time === undefined ? {} : { time }),
    ...forces,
    ...answers,
    layout: { name: layout.name, provesPlates },
  };
}

function littleKnown({ name }: KnownShape): Finding {
  return finding("layout-unclear/little-known", "note", { name });
}
