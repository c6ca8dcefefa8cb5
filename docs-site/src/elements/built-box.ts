import { builtText, type Designed } from '../built-as-designed.js';

/** A dip that was measured on the finished box, and what it tells. */
class BuiltBox extends HTMLElement {
  connectedCallback(): void {
    const designs: readonly Designed[] = JSON.parse(this.dataset.designs ?? '[]');
    this.addEventListener('input', () => {
      const [name, measured] = [this.querySelector('select')?.value, this.querySelector('input')?.valueAsNumber];
      const designed = designs.find((one) => one.name === name) ?? designs[0];
      const told = this.querySelector('output');
      if (told && designed) told.textContent = measured && measured > 0 ? builtText(measured, designed) : '';
    });
  }
}

customElements.define('built-box', BuiltBox);
