/** Signing in at a provider of OpenID Connect: its settings, its keys, and proof of its word. */
@NullMarked
package org.chordlog.web.openid;

import org.jspecify.annotations.NullMarked;
