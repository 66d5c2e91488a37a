import type { PictureKind } from './picture-kind.js';
import type { Picture } from './picture.js';

type Clock = Extract<Picture, { kind: 'clock' }>;

export const clock: PictureKind<Clock> = {
    kind: 'clock', title: 'Clock', examples: ['clock 9:30', 'clock 12:05', 'clock 14:45'],
    says: 'A clock face with its two hands; the hour hand moves on with the minutes.',
    settings: 'An hour and minutes from 0:00 to 23:59. After noon the face shows what it shows, and the words say both.',
    read(settings) {
        const missing = 'What time does the clock show? Write hours and minutes, as in: show clock 9:30';
        const written = settings.peek();
        if (written === undefined || !/^\d/.test(written)) return settings.wrongNext(missing);
        settings.take();
        const [, hours = '', minutes] = /^(\d{1,2})(?:[:.](\d{2}))?$/.exec(written) ?? [];
        const [hour, minute] = [Number(hours), Number(minutes ?? '0')];
        const isTime = hours !== '' && hour < 24 && minute < 60;
        if (!written.includes(':')) return settings.wrong(missing, isTime && settings.texts.length === 1 ? `${hour}:${twoDigits(minute)}` : undefined);
        if (hour === 24 && minute === 0) return settings.wrong('24:00 is midnight: write it as 0:00.', '0:00');
        if (hour > 23) return settings.wrong(`No clock shows ${hour} hours: write an hour from 0 to 23.`);
        if (minute > 59) return settings.wrong(`An hour has 60 minutes, so ${written} is no time: the minutes go from 00 to 59.`);
        return settings.tooMuch('A clock shows one time') ?? { kind: 'clock', hour, minute };
    },
    next: () => [],
    inWords({ hour, minute }) {
        const face = onFace(hour);
        const following = face === 12 ? 1 : face + 1;
        const hourHand = minute === 0 ? `on ${face}` : `between ${face} and ${following}`;
        const minuteHand = minute % 5 === 0 ? `on ${minute === 0 ? 12 : minute / 5}` : `at ${minute} ${minute === 1 ? 'minute' : 'minutes'}`;
        return `Clock: ${hour}:${twoDigits(minute)}, ${spoken(hour, minute)}. The short hour hand stands ${hourHand}, the long minute hand ${minuteHand}.`;
    }
};

/** The number on a face of twelve hours. */
const onFace = (hour: number): number => hour % 12 || 12;

const twoDigits = (minute: number): string => String(minute).padStart(2, '0');
const hourNames = ['twelve', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven'];
const namedMinutes: Record<number, string> = { 5: 'five', 10: 'ten', 15: 'quarter', 20: 'twenty', 25: 'twenty-five' };

/** As people say it: "half past nine", "midnight", "quarter to three in the afternoon"; hours up to twelve leave open which half of the day. */
function spoken(hour: number, minute: number): string {
    const said = hourNames[hour % 12]!;
    const next = hourNames[(hour + 1) % 12]!;
    if (minute === 0 && hour === 0) return 'midnight';
    const time = minute === 0 ? `${said} o'clock`
        : minute === 30 ? `half past ${said}`
            : minute < 30 ? `${minutesInWords(minute)} past ${said}` : `${minutesInWords(60 - minute)} to ${next}`;
    return `${time}${hour === 0 ? ' at night' : hour > 17 ? ' in the evening' : hour > 12 ? ' in the afternoon' : ''}`;
}

function minutesInWords(minutes: number): string {
    return namedMinutes[minutes] ?? `${minutes} ${minutes === 1 ? 'minute' : 'minutes'}`;
}
