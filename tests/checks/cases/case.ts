/** Cases of rules: a small project that fires a rule with a verdict, or stands just inside and does not. */

export interface Case {
  readonly rule: string;
  /** What the project does, in words that end the sentence '<rule> …'. */
  readonly when: string;
  /** The verdict of the rule's findings; `silent` when there must be none. */
  readonly verdict: 'breach' | 'strain' | 'unproven' | 'thin' | 'note' | 'silent';
  readonly text: string;
  /** The one that the rule's page shows, where the two that differ least are not the clearest. */
  readonly shown?: true;
}

interface Setting {
  /** Policy `classroom` keeps nothing in hand, so that a figure can stand exactly at its limit. */
  readonly policy?: 'everyday' | 'classroom';
  readonly ambient?: string;
  /** More rows of YAML at the top level. */
  readonly more?: string;
}

const head = ({ policy = 'everyday', ambient = '25 °C' }: Setting): string =>
  `ampledger: 1\ntitle: On the bench\nambient: ${ambient}\npolicy: ${policy}`;

/** Loads on supplies alone. */
export const onSupplies = (supplies: string, loads: string, setting: Setting = {}): string =>
  `${head(setting)}
supplies: { ${supplies} }
loads:
${rows(loads)}
${setting.more ?? ''}`;

/**
 * A bare ATmega328P on exactly 5 V whose pins have exactly 25 Ω and which draws exactly 10 mA: 225 Ω on a pin are 20 mA.
 *
 * @param limits rows that take the place of published ones
 */
export const onChip = (loads: string, setting: Setting & { readonly limits?: string } = {}): string =>
  `${head(setting)}
supplies: { bench: { voltage: 5 V, current: 5 A } }
controllers:
  main: { chip: atmega328p, supply: bench, pin-resistance: { source: 25 Ω, sink: 25 Ω }, draws: { active: 10 mA }${limits(setting.limits)} }
loads:
${rows(loads)}
${setting.more ?? ''}`;

/** Rows of limits on a line of their own, where there are any. */
export const limits = (text = ''): string => (text === '' ? '' : `,\n          limits: [ ${text} ]`);

/**
 * The 5 V board on exactly 5 V at its USB inlet, drawing exactly 50 mA; its 3.3 V regulator draws nothing for itself.
 *
 * @param regulators parts of its supply tree that differ
 */
export const onBoard = (
  loads: string,
  setting: Setting & { readonly regulators?: string; readonly powered?: string; readonly supplies?: string } = {},
): string =>
  `${head(setting)}
supplies: { ${setting.supplies ?? 'bench: { voltage: 5 V, current: 5 A }'} }
controllers:
  main: { board: atmega328p-5v-board, powered: { ${setting.powered ?? 'usb: bench'} }, draws: { active: 50 mA },
          regulators: { ${setting.regulators ?? 'regulator-3v3: { quiescent: 0 mA }'} } }
loads:
${rows(loads)}
${setting.more ?? ''}`;

const rows = (text: string): string =>
  text
    .trim()
    .split('\n')
    .map((line) => `  ${line.trim()}`)
    .join('\n');
