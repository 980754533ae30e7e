import { helpCost } from '#engine/marking/guidance.ts';
import { language, say } from '#ui/language/language.svelte.ts';
import { ruleWords } from '#ui/measure/rule-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import { minutesWords, pointsWords } from './clock-words.ts';
import type { News } from './news.ts';
import type { Refusal } from './refusal.ts';

export function newsWords(news: News): string {
  const { current } = language;
  switch (news.kind) {
    case 'placed':
      return m.mockup_news_placed({ card: say(news.card.say), count: news.count });
    case 'refused':
      return [
        refusalTitle(news.refusal),
        ...refusalReasons(news.refusal),
        m.mockup_costs({ points: pointsWords(helpCost.refusal) }),
      ].join(' ');
    case 'undone':
      return m.mockup_news_undone({ card: news.card ? say(news.card.say) : '' });
    case 'waited':
    case 'unwaited':
      return m.mockup_news_waited({ reading: minutesWords(news.reading, current) });
    case 'touched':
      return news.touched.length === 0
        ? m.mockup_touch_nothing()
        : news.touched.map(({ step, feel }) => `${say(step.say)}: ${feelWords[feel]()}.`).join(' ');
    case 'hinted':
      return news.hint.texts.map(say).join(' ');
  }
}

export const feelWords = {
  wet: m.mockup_wet,
  tacky: m.mockup_tacky,
  dry: m.mockup_dry,
  dew: m.mockup_dew,
};

export function refusalTitle(refusal: Refusal): string {
  switch (refusal.kind) {
    case 'stray':
      return m.mockup_refused_stray();
    case 'not-yet':
      return m.mockup_refused_not_yet();
    case 'still-wet':
      return m.mockup_refused_wet();
    case 'tolerance':
      return m.mockup_refused_tolerance();
  }
}

/** The reasons, each a sentence or two. What the data sheet asks is told only when asked again. */
export function refusalReasons(refusal: Refusal): readonly string[] {
  switch (refusal.kind) {
    case 'stray':
      return [refusal.because ? say(refusal.because) : m.mockup_refused_elsewhere()];
    case 'not-yet':
      return refusal.because.map(say);
    case 'still-wet':
      return [say(refusal.because), say(refusal.test)];
    case 'tolerance':
      return [
        say(refusal.because),
        ...(refusal.isTold ? [m.mockup_refused_asks({ rule: ruleWords(refusal.rule) })] : []),
      ];
  }
}
