import { afterFirstPaint } from '../../lib/view/calculator/after-first-paint.ts'

afterFirstPaint(() => import('./main.tsx'))
