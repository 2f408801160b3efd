import { foldWord } from "./column-words.ts";
import type { HeaderHintKind } from "./header-hint.ts";

/** What a key asks after; "interval" is a rate told by its step, "timeUnit" and "other" are not used. */
export type KeyMeaning = HeaderHintKind | "interval" | "other";

/**
 * Keys, folded (lower case, without accents): English, German, French, Spanish, then further languages. The first that
 * matches wins, so that "number of samples" is no sampling rate and "filter frequency" no rate at all.
 */
const meanings: readonly (readonly [KeyMeaning, RegExp])[] = [
  // Rates of something else, and limbs or heights that are not the trial's.
  [
    "other",
    /filter|cut ?-?off|corner|low ?-?pass|high ?-?pass|grenzfrequenz|tiefpass|coupure|corte|taglio|video|camera|kamera|marker|kinemat|\bemg\b|heart|herz|cardia|natural|eigenfreq|resonan|screen/u,
  ],
  [
    "other",
    /birth|geburt|naissance|nacimiento|nascita|nascimento|geboorte|urodzenia|fodsel|narozeni|生年|出生|рождения/u,
  ],
  [
    "other",
    /involved|injured|dominan|operated|affected|surg|betroffen|verletzt|operiert|opere|bless|atteint|lesion|afectad|operad|reference/u,
  ],
  [
    "interval",
    /interval|\bdt\b|delta ?t|time ?step|sampl\w* (?:time|period)|zeitschritt|abtastzeit|schrittweite|pas de temps|pas d.echant|periode|periodo|paso de tiempo|intervallo|サンプリング間隔|采样间隔/u,
  ],
  [
    "samples",
    /^(?:n |nr?\.? |no\.? |number |num |total |count )?(?:of )?(?:the )?(?:samples?|data ?points|frames|rows|records|scans)(?: ?(?:count|number|total))?$|^sample ?count$|anzahl.*(?:werte|samples|messpunkte|punkte|bilder|zeilen)|^(?:abtastwerte|messwerte)$|nombre.*(?:echantillons|points|trames|lignes)|(?:numero|cantidad|no\.?) de (?:muestras|puntos|datos|amostras)|^muestras$|numero (?:di )?campioni|aantal|liczba probek|^antal|^antall|pocet vzorku|ornek sayisi|サンプル数|データ数|样本数|采样点数|数据点数|число отсчетов/u,
  ],
  [
    "rate",
    /sampl\w*[ _-]?(?:rate|freq)|^sampling$|(?:acquisition|recording|scan|data|force|analog|frame)[ _-]?(?:rate|freq)|^(?:f_?s|rate|freq\w*|frequenz|frequence|frecuencia|frequenza|frequencia|frequentie|frekven\w*|frekans\w*|czestotliwosc|cadence|hz)$|abtast|mess(?:rate|frequenz)|aufnahme(?:rate|frequenz)|echantillonnage|frequence d.acquisition|muestreo|frecuencia de adq|campionamento|amostragem|bemonster|sample?frequentie|meetfrequentie|probkowan|samplings?frekvens|provtagning|vzorkovac|ornekleme|サンプリング(?:周波数|レート)|標本化周波数|采样(?:率|频率)|取樣(?:率|頻率)|採樣(?:率|頻率)|샘플링|частота дискретизации|^частота$/u,
  ],
  [
    "dropHeight",
    /(?:drop|box|fall|step)[ _-]?height|^box$|height of (?:the )?(?:drop|box)|fallhohe|kastenhohe|absprunghohe|hauteur (?:de )?(?:la )?(?:chute|caisse|boite|box)|altura (?:de |del )?(?:la )?(?:caida|cajon|queda|caixa)|altezza (?:di )?(?:caduta|box)|valhoogte|fallhojd|faldhojde|fallhoyde|wysokosc zeskoku|落下高|跳箱高/u,
  ],
  [
    "mass",
    /^(?:body ?)?(?:mass|weight)$|^bm$|(?:athlete|subject|participant|person)(?:.s)? ?(?:mass|weight)|^(?:korper)?(?:masse|gewicht)$|^(?:masse|poids)(?: corporelle?| du sujet)?$|^(?:masa|peso)(?: corporal)?$|^(?:massa|peso)(?: corpore[ao]| corporal)?$|^(?:lichaams)?(?:massa|gewicht)$|^(?:masa|waga)(?: ciala)?$|^(?:kropps?|krops)?(?:vikt|vaegt|vekt|massa|masse)$|^hmotnost$|^(?:vucut )?(?:kutle|agirlik|agirligi)$|^体重$|^體重$|^体质量$|^체중$|^масса(?: тела)?$|^вес$/u,
  ],
  [
    "date",
    /^(?:test |trial |session |recording |measurement |acquisition )?(?:date|datum|fecha|data|dato|tarih)(?: (?:of|de|du|der|des|da|di) .*)?$|^recorded(?: on)?$|^(?:mess|test|aufnahme)datum$|^日付$|^測定日$|^日期$|^날짜$|^дата$/u,
  ],
  [
    "athlete",
    /^(?:athlete|subject|participant|patient|proband\w*|sportler\w*|athlet\w*|sujet|sportif|sportive|participante?|deportista|sujeto|paciente|atleta|soggetto|sujeito|deelnemer|zawodnik|deltagare|deltager|deltaker|sporcu|選手|被験者|受试者|运动员|선수|участник|спортсмен)(?: ?(?:code|id|nr?\.?|no\.?|number|nummer|numero|kennung|codigo|codice))?$|^(?:id|code)$/u,
  ],
  [
    "unit",
    /^(?:(?:force |kraft)?(?:units?|einheit(?:en)?)|unites?(?: de force)?|unidad(?:es)?(?: de fuerza)?|unita(?: di forza)?|unidades?|eenhe(?:id|den)|jednostk[ai]|enhet(?:er)?|enhed(?:er)?|jednotk[ay]|birim|単位|单位|單位|단위|единиц[аы])$/u,
  ],
  [
    "side",
    /^(?:(?:test(?:ed)?|jump(?:ing)?|stance|working) ?)?(?:side|leg|legs|limb|limbs|foot|feet)$|^(?:seite|bein|beine|fuss|sprungbein)$|^(?:cote|jambe|pied|membre)$|^(?:lado|pierna|pie|extremidad)$|^(?:lato|gamba|arto|perna|membro|zijde|been|voet|strona|noga|sida|ben|fot|fod|strana|taraf|bacak)$|^(?:脚|足|側|腿|侧|다리|нога|сторона)$/u,
  ],
  [
    "test",
    /^(?:test|trial|task|movement|exercise|jump|activity)(?: ?(?:type|name|kind))?$|^(?:test(?:art|form|name)?|ubung|aufgabe|bewegung|sprung(?:art|form)?)$|^(?:type de (?:saut|test)|tache|mouvement|saut|exercice|epreuve)$|^(?:tipo de (?:salto|prueba)|prueba|tarea|salto|movimiento|ejercicio)$|^(?:esercizio|prova|compito|tarefa|teste|oefening|sprong|cwiczenie|skok|ovning|hopp|ovelse|hop|zkouska|sicrama|種目|测试|テスト)$/u,
  ],
];

/** What a key means, its brackets left aside; undefined where it means nothing known. */
export function keyMeaning(key: string): KeyMeaning | undefined {
  const bare = foldWord(key)
    .replace(/\s*[([][^)\]]*[)\]]\s*$/u, "")
    .replace(/[_\s]+/g, " ")
    .trim();
  return meanings.find(([, pattern]) => pattern.test(bare))?.[0];
}

/** The unit in a key's brackets: "Mass (kg)". */
export function unitInKey(key: string): string {
  return /[([]\s*([^)\]]*?)\s*[)\]]\s*$/u.exec(key)?.[1] ?? (/^\s*hz\s*$/i.test(key) ? "Hz" : "");
}

/** True for a line of prose that speaks of sampling. */
export function speaksOfSampling(prose: string): boolean {
  const folded = foldWord(prose);
  if (keyMeaning(prose) === "other") return false;
  return /sampl|abtast|aufgezeichnet|gemessen mit|echantillon|enregistre|muestre|registrad|campion|amostra|recorded (?:at|with)|サンプリング|采样/u.test(
    folded,
  );
}
