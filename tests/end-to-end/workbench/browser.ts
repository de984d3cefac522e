import { type Browser, chromium } from 'playwright-core'

/** Starts a Chromium without a window. */
export function launchBrowser(): Promise<Browser> {
	const quiet = ['--disable-background-networking', '--disable-component-update', '--disable-sync', '--no-first-run']
	return chromium.launch({
		executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
		// Its sandbox does not start for root, whom containers run as; it only visits our own editor.
		args: ['--no-sandbox', '--disable-gpu', '--disable-quic', ...quiet],
	})
}
