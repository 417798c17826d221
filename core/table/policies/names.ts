import type { PolicyMaker } from '../policy.ts';
import { adviser } from './adviser.ts';
import { beginner } from './beginner.ts';
import { FAILINGS } from '../kinds.ts';
import { fallible } from './fallible.ts';
import { planner } from './planner.ts';
import { nearest, soft } from './by-weight.ts';

export const POLICY_NAMES = ['beginner', 'nearest', 'soft', 'planner', 'adviser', 'club', 'relaxed'] as const;
export type PolicyName = (typeof POLICY_NAMES)[number];

export const POLICIES: Readonly<Record<PolicyName, PolicyMaker>> = {
  beginner,
  nearest,
  soft,
  planner,
  adviser,
  club: fallible(FAILINGS.club),
  relaxed: fallible(FAILINGS.relaxed),
};
