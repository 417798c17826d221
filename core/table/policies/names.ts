import type { PolicyMaker } from '../policy.ts';
import { beginner } from './beginner.ts';
import { planner } from './planner.ts';
import { nearest } from './nearest.ts';
import { soft } from './soft.ts';

export const POLICY_NAMES = ['beginner', 'nearest', 'soft', 'planner'] as const;
export type PolicyName = (typeof POLICY_NAMES)[number];

export const POLICIES: Readonly<Record<PolicyName, PolicyMaker>> = { beginner, nearest, soft, planner };
