/** Runs a task once at a time. Asked while it runs, it runs once more afterwards, however often it was asked. */
export class Newest {
    private running = false;
    private again = false;

    /** @param task must settle; what it throws is passed to `failed` */
    constructor(private readonly task: () => Promise<void>, private readonly failed: (error: unknown) => void) {}

    ask(): void {
        if (this.running) {
            this.again = true;
            return;
        }
        void this.run();
    }

    private async run(): Promise<void> {
        this.running = true;
        do {
            this.again = false;
            try {
                await this.task();
            } catch (error) {
                this.failed(error);
            }
        } while (this.again);
        this.running = false;
    }
}
