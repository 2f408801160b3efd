/** Words of column names, lower case and folded (see `foldWord`), by what they say. */

const words = (...lists: readonly string[]): ReadonlySet<string> => new Set(lists.flatMap((list) => list.split(" ")));

// One line a language: English, German, French, Spanish, then Italian, Portuguese, Dutch, Polish, the Scandinavian
// ones, Finnish, Czech, Hungarian, Turkish, Russian. Only words that can mean nothing else beside a column of numbers.
export const timeWords = words(
  "time t timestamp seconds elapsed",
  "zeit zeitpunkt zeitstempel messzeit",
  "temps horodatage",
  "tiempo",
  "tempo tijd czas tid aika cas ido zaman время",
);
export const indexWords = words(
  "index idx frame frames sample samples nr no row",
  "abtastwert abtastung bild messpunkt",
  "echantillon trame",
  "muestra cuadro indice",
  "campione amostra probka vzorek ornek",
);
export const leftWords = words(
  "left l lt lhs lfz fzl",
  "links linke linker linkes linken",
  "gauche",
  "izquierda izquierdo izq izqda izqdo",
  "sinistra sinistro esquerda esquerdo esq linkerbeen linkervoet lewa lewy lewej vanster venstre vasen",
  "leva levy левая левый лев лево",
);
export const rightWords = words(
  "right r rt rhs rfz fzr",
  "rechts rechte rechter rechtes rechten",
  "droite droit",
  "derecha derecho dcha dcho",
  "destra destro direita direito rechterbeen rechtervoet prawa prawy prawej hoger hojre hoyre oikea",
  "prava pravy правая правый прав право",
);
export const totalWords = words(
  "total sum both combined bilateral overall",
  "summe gesamt gesamtkraft summenkraft beide",
  "totale totales somme deux",
  "suma ambos ambas",
  "somma totaal beiden celkem celkova calkowita samlet totalt summa osszes toplam сумма общая",
);
export const forceWords = words(
  "force forces fz vgrf grf grfz load f",
  "kraft krafte last bodenreaktionskraft",
  "charge",
  "fuerza fuerzas",
  "forza forca kracht sila voima ero kuvvet сила",
);
export const verticalWords = words(
  "fz vgrf grfz vertical z lfz rfz fzl fzr",
  "vertikal vertikale",
  "verticale",
  "verticaal pionowa lodret loddrett svisla dikey вертикальная",
);
export const otherWords = words(
  "fx fy mx my mz tz ax ay az cop copx copy x y ap ml grfx grfy anterior posterior medial lateral horizontal",
  "moment torque velocity speed acceleration displacement position power impulse trigger sync marker event asymmetry",
  "difference diff temperature angle emg copz resultant resultante resultierende magnitude betrag norm",
  "geschwindigkeit beschleunigung weg leistung differenz winkel",
  "vitesse puissance deplacement",
  "velocidad aceleracion potencia angulo desplazamiento",
  "velocita accelerazione potenza velocidade aceleracao snelheid versnelling vermogen predkosc hastighet hastighed",
  "rychlost hiz скорость",
);
/** Parts of a foot that stand on plates of their own. */
export const footPartWords = words(
  "heel forefoot toe toes front rear back hindfoot rearfoot",
  "ferse vorfuss ruckfuss hinten vorne",
  "talon avant arriere",
  "talon antepie puntera",
  "tallone avampiede calcanhar antepe hiel voorvoet pieta hal forfot forfod",
);

/** Words behind which a letter numbers a plate or a channel. */
export const plateWords = words(
  "plate platform fp channel ch",
  "platte plattform kanal",
  "plateforme canal",
  "plataforma placa",
);

/**
 * Short or double-edged words for left and right: they say a side only where another column holds the other one of
 * the pair ("dx" alone may be a displacement, "sol" a sun).
 */
export const sidePairs: readonly (readonly [left: string, right: string])[] = [
  ["li", "re"],
  ["g", "d"],
  ["gche", "dte"],
  ["izq", "der"],
  ["i", "d"],
  ["sx", "dx"],
  ["sin", "des"],
  ["sn", "ds"],
  ["esq", "dir"],
  ["e", "d"],
  ["v", "h"],
  ["l", "p"],
  ["lewa", "pr"],
  ["sol", "sag"],
  ["bal", "jobb"],
  ["fl", "fr"],
  ["lf", "rf"],
];

/** Japanese, Chinese and Korean have no blanks between words: the characters themselves are looked for. */
export const eastAsian = {
  time: /時間|时间|時刻|시간/u,
  left: /左|왼|좌/u,
  right: /右|오른|우측|우\b/u,
  total: /合計|合计|総|总|總|全体|합계|총/u,
  force: /力|荷重|반력|힘/u,
  vertical: /鉛直|垂直|竖直|鉛垂|수직/u,
  other: /水平|前後|前后|モーメント|力矩|加速度|速度|变位|変位|位移|角度|시상|속도|差/u,
} as const;

/** Lower case without accents; letters that carry no separable accent are written as they are usually transcribed. */
export function foldWord(text: string): string {
  return text
    .normalize("NFD")
    .replace(/(?![\u3099\u309a])\p{M}/gu, "")
    .normalize("NFC")
    .toLowerCase()
    .replace(/[øłđıæœß]/g, (letter) => transcribed[letter] ?? letter);
}

const transcribed: Readonly<Record<string, string>> = {
  ø: "o",
  ł: "l",
  đ: "d",
  ı: "i",
  æ: "ae",
  œ: "oe",
  ß: "ss",
};
