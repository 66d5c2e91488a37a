// Loaded into a server under test: on SIGUSR2 it collects garbage and tells the bytes of its heap, and how many of them are compiled code, which
// the engine makes more of while the same work is done again and again.
import { getHeapCodeStatistics } from 'node:v8';

process.on('SIGUSR2', () => {
    globalThis.gc();
    globalThis.gc();
    const { code_and_metadata_size: code, bytecode_and_metadata_size: bytecode } = getHeapCodeStatistics();
    process.stderr.write(`heap ${process.memoryUsage().heapUsed} ${code + bytecode}\n`);
});
