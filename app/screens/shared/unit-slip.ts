/** Whether a weight looks as if one unit was taken for another: for the weighing field, by the same rule that an auditor's list goes by. */
export { type Slip, unitSlip } from '../../core/unit-slip.ts';
