import type { Material } from '../../../lib/form/material.ts';
import { type Plan } from '../../../lib/form/plan.ts';
import type { Binding, Clues, ReceiptLine } from '../../../lib/form/schema.ts';
export declare function clues(): Clues[];
export declare function leftOut(): {
    name: string;
    reason: string;
    detail: string;
}[];
export declare function found(wanted: Clues): string;
export declare function suggestions(material: Material): {
    control: string;
    item: string;
    reason: string;
    clear: boolean;
}[];
export declare function makePlan(bindings: Binding[], material: Material): Omit<Plan, 'document' | 'bindings' | 'targets' | 'candidates'>;
export declare function pickCandidate(binding: string, index: number, material: Material): void;
export declare function runFill(chosen?: string[]): Promise<ReceiptLine[]>;
/** Every line that was reported on the way, in order. */
export declare function reported(): ReceiptLine[];
export declare function stoppedFill(after: number): Promise<ReceiptLine[]>;
export declare function runUndo(): Promise<ReceiptLine[]>;
