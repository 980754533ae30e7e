export { quantityWords } from '#engine/measure/quantity-words.ts';
