/** A process of its own that makes a backup; it is killed meanwhile. */
import { runJob } from '../../main/host/backup/jobs.ts';

const { order, asides } = JSON.parse(process.argv[2] ?? '{}');
await runJob({ job: 'backup', asides, order });
