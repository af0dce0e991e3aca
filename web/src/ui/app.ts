import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Player } from '../store/player.ts';

const PlayerContext = createContext<Player | null>(null);

export const WithPlayer = PlayerContext.Provider;

export function usePlayer(): Player {
  const player = useContext(PlayerContext);
  if (!player) throw new Error('There is no player here.');
  return player;
}
