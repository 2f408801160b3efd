/**
 * What happens in a trial, from where it starts to its last landing (METHODS §6). Several kinds of test may take one
 * course; the stages decide by the facts of a course and never by a kind's name.
 */
export type TestCourse = "dipAndJump" | "holdAndJump" | "dropAndJump" | "hops" | "dropAndLand";

/** What every stage needs to know of a course. A course is added by answering all of it. */
export interface CourseFacts {
  readonly course: TestCourse;
  /** Where the movement starts: upright, low in a hold, on a box, or in a jump that only leads up to it. */
  readonly start: "standing" | "hold" | "box" | "entry jump";
  /** The quiet standing that weighs the athlete and gives velocity and position, where there is some (METHODS §2). */
  readonly weighedBy: "standing before" | "standing after";
  /** What turns the body round before it pushes off: a dip from standing, or the contact that ends a fall. */
  readonly turn: "dip" | "contact" | "none";
  /** Flights whose jumps are measured. */
  readonly flights: "none" | "one" | "many";
  /** How often one trial lands; where contacts are numbered the last of them is the landing. */
  readonly landings: 1 | 2 | "each contact";
  /** How hard it is on a knee, beside the number of legs: what a limit, a gate or a week speaks of. */
  readonly load: "jump" | "hops" | "drop";
  /** The measure of both legs together by which it is judged. */
  readonly judgedBy:
    | "jumpHeightImpulse"
    | "reactiveStrengthIndex"
    | "reactiveStrengthIndexBestFive"
    | "peakLandingForce";
}

/** The facts of each course. */
export const courses: { readonly [Course in TestCourse]: CourseFacts & { readonly course: Course } } = {
  dipAndJump: {
    course: "dipAndJump",
    start: "standing",
    weighedBy: "standing before",
    turn: "dip",
    flights: "one",
    landings: 1,
    load: "jump",
    judgedBy: "jumpHeightImpulse",
  },
  holdAndJump: {
    course: "holdAndJump",
    start: "hold",
    weighedBy: "standing before",
    turn: "none",
    flights: "one",
    landings: 1,
    load: "jump",
    judgedBy: "jumpHeightImpulse",
  },
  dropAndJump: {
    course: "dropAndJump",
    start: "box",
    weighedBy: "standing after",
    turn: "contact",
    flights: "one",
    landings: 2,
    load: "drop",
    judgedBy: "reactiveStrengthIndex",
  },
  hops: {
    course: "hops",
    start: "entry jump",
    weighedBy: "standing after",
    turn: "contact",
    flights: "many",
    landings: "each contact",
    load: "hops",
    judgedBy: "reactiveStrengthIndexBestFive",
  },
  dropAndLand: {
    course: "dropAndLand",
    start: "box",
    weighedBy: "standing after",
    turn: "none",
    flights: "none",
    landings: 1,
    load: "drop",
    judgedBy: "peakLandingForce",
  },
};
