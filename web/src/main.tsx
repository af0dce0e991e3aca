import { render } from 'preact';
import { readSong } from './song/blocks.ts';
import { Player } from './store/player.ts';
import { App } from './ui/App.tsx';
import './look/page.css';

const holder = document.getElementById('app') as HTMLElement;
try {
  const player = new Player(readSong(), () => localStorage);
  render(<App player={player} />, holder);
} catch (error) {
  holder.textContent = `This page can't be opened: ${error instanceof Error ? error.message : String(error)}`;
}
