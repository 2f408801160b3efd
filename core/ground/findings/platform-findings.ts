type Nothing = Readonly<Record<never, never>>;

interface Tilt {
  readonly name: string;
  readonly degrees: number;
  readonly upwardAxis: string;
}

interface PlatformUnitFigures {
  readonly name: string;
  /** As the file writes it at the vertical channel; "" where it is silent. */
  readonly written: string;
}

interface AgainstFile {
  readonly statedHz: number;
  readonly ownHz: number;
}

/** The figures of what is found about the force platforms of a C3D file. */
export interface PlatformFindings {
  readonly "no-force-platform/no-analog-channel": { readonly points: number };
  readonly "no-force-platform/none-described": { readonly channelCount: number };
  readonly "no-force-platform/none-readable": Nothing;
  /** `problem` is a clause. */
  readonly "platform-unreadable/problem": { readonly name: string; readonly problem: string };
  readonly "platform-unreadable/not-described": { readonly first: number; readonly last: number };
  readonly "platform-tilted/no-plane": { readonly name: string };
  readonly "platform-tilted/turned": Tilt;
  readonly "platform-tilted/by-corners": Tilt;
  readonly "scaling-assumed/calibration": { readonly name: string };
  readonly "sign-turned/platforms": { readonly names: readonly string[] };

  readonly "columns-unclear/no-platform-loaded": { readonly names: readonly string[]; readonly newtons: number };
  /** Those that carry load, of so many that can be read. */
  readonly "columns-unclear/platforms-loaded": { readonly readable: number; readonly names: readonly string[] };
  readonly "columns-unclear/no-such-platform": { readonly key: string; readonly names: readonly string[] };
  readonly "columns-unclear/platform-twice": { readonly platform: number };
  readonly "columns-unclear/total-beside-foot": Nothing;
  readonly "columns-unclear/no-time-in-c3d": Nothing;
  readonly "platforms-left-out": { readonly names: readonly string[] };
  readonly "plates-unproved/platform-order": { readonly left: string; readonly right: string };

  readonly "unit-not-stated/platform": PlatformUnitFigures;
  readonly "unit-not-stated/newtons-taken": PlatformUnitFigures;
  readonly "rate-missing/no-frame-rate": Nothing;
  readonly "rate-missing/stated-of-no-plate": { readonly rateHz: number };
  readonly "rate-contradicts/of-no-plate": { readonly rateHz: number };
  readonly "rate-contradicts/frame-rate": AgainstFile;
  readonly "rate-contradicts/frame-rate-used": AgainstFile;
  readonly "cells-unreadable/too-few-samples": Nothing;
  readonly "cells-unreadable/samples-inside": { readonly samples: number; readonly firstSeconds: number };
  readonly "cells-unreadable/samples-at-ends": { readonly samples: number };
}
