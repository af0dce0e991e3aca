import './form.test.ts';
import './runs.test.ts';
import './sync.test.ts';
import './transport.test.ts';
import './memory.test.ts';
import './neck.test.ts';
import './tuning.test.ts';
import './sound.test.ts';
