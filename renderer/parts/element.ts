import { LitElement, type PropertyDeclaration } from 'lit';

/** One property of an element: how it is declared, and what it is until somebody sets it. */
export interface Property<T> {
  readonly declaration: PropertyDeclaration;
  /** Makes the value that each element starts with; null where it stays undefined until it is set. */
  readonly initial: (() => T) | null;
}

/** A value written out where it is plain, otherwise the way to make it, so that no two elements share it. */
type Initial<T> = Extract<T, string | number | boolean | null> | (() => T);

/** A property that is an attribute, too. */
export function text(initial?: string): Property<string>;
export function text<T extends string | null>(initial: T): Property<T>;
export function text(initial: string | null = ''): Property<string | null> {
  return property<string | null>({}, [initial]);
}

/** A property that is a boolean attribute, too. */
export function flag(initial?: boolean): Property<boolean>;
export function flag(initial: null): Property<boolean | null>;
export function flag(initial: boolean | null = false): Property<boolean | null> {
  return property<boolean | null>({ type: Boolean }, [initial]);
}

/** A property that is an attribute with a number, too. */
export function numeric(initial?: number): Property<number>;
export function numeric<T extends number | null>(initial: T): Property<T>;
export function numeric(initial: number | null = 0): Property<number | null> {
  return property<number | null>({ type: Number }, [initial]);
}

/** A property that only code sets. */
export const data = <T>(...initial: readonly [Initial<T>?]): Property<T> => property({ attribute: false }, initial);

/** What an element itself remembers; nobody else sets it. */
export function state(initial: string): Property<string>;
export function state(initial: number): Property<number>;
export function state(initial: boolean): Property<boolean>;
export function state<T>(...initial: readonly [Initial<T>?]): Property<T>;
export function state<T>(...initial: readonly [Initial<T>?]): Property<T> {
  return property({ state: true }, initial);
}

/** The same property, and its attribute follows it. */
export const reflected = <T>({ declaration, initial }: Property<T>): Property<T> => ({
  declaration: { ...declaration, reflect: true },
  initial,
});

/** The same property, which changes only where `isSame` says no. */
export const comparedBy = <T>(
  isSame: (now: T, before: T) => boolean,
  { declaration, initial }: Property<T>,
): Property<T> => ({
  declaration: { ...declaration, hasChanged: (now: T, before: T) => !isSame(now, before) },
  initial,
});

type Properties = Readonly<Record<string, Property<unknown>>>;

type Values<P extends Properties> = { -readonly [K in keyof P]: P[K] extends Property<infer T> ? T : never };

/** No property may have the name of something that every element has. */
type Own<P extends Properties> = P & { readonly [K in Extract<keyof P, keyof LitElement>]: never };

type ElementClass<P extends Properties> = Omit<typeof LitElement, 'prototype'> & (new () => LitElement & Values<P>);

/**
 * The class to extend for an element with these properties: it declares them to Lit and gives them
 * their first values. To be called `Base`, by which the lint knows elements.
 */
export function element<const P extends Properties>(properties: Own<P>): ElementClass<P> {
  const all = Object.entries<Property<unknown>>(properties);
  class Element extends LitElement {
    static override properties = Object.fromEntries(all.map(([name, { declaration }]) => [name, declaration]));

    constructor() {
      super();
      for (const [name, { initial }] of all) if (initial !== null) Reflect.set(this, name, initial());
    }
  }
  return Element as unknown as ElementClass<P>;
}

function property<T>(declaration: PropertyDeclaration, given: readonly [Initial<T>?]): Property<T> {
  if (given.length === 0) return { declaration, initial: null };
  const [value] = given;
  return { declaration, initial: typeof value === 'function' ? value : () => value as T };
}
