//! Serves the built page on this machine only.

use crate::build;
use crate::process::root;
use anyhow::{Context, Result, bail};
use axum::Router;
use axum::extract::Request;
use axum::http::{HeaderName, HeaderValue, header};
use axum::middleware::{Next, from_fn};
use axum::response::{IntoResponse, Redirect, Response};
use std::fs;
use std::io::Read;
use std::net::Ipv4Addr;
use std::path::Path;
use tower_http::services::ServeDir;
use tower_http::set_header::SetResponseHeaderLayer;

/// Port used when none is asked for.
pub(crate) const DEFAULT_PORT: u16 = 8017;

/// What to serve on.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Options {
    /// TCP port; 0 takes any free one.
    pub port: u16,
    /// Path below which the page lies, for trying a sub-path; empty for the root.
    pub under: String,
    /// End when standard input is closed, so that a test which started this never leaves it behind.
    pub end_with_input: bool,
}

/// Builds the page and serves it until the process is ended.
pub(crate) fn serve(options: &Options) -> Result<()> {
    // Before the build: a busy port should be told at once.
    let listener = std::net::TcpListener::bind((Ipv4Addr::LOCALHOST, options.port));
    let listener = match listener {
        Ok(listener) => listener,
        Err(error) if error.kind() == std::io::ErrorKind::AddrInUse => bail!(
            "port {} is in use; end the other program, or name another port with --port (0 takes any free one)",
            options.port
        ),
        Err(error) => return Err(error).context(format!("could not open port {}", options.port)),
    };
    listener.set_nonblocking(true)?;
    let dir = build::site();
    build::page(&dir)?;

    let base = options.under.trim_matches('/');
    let address = listener.local_addr()?;
    let slash = if base.is_empty() { "" } else { "/" };
    println!("Gearswing is at http://{address}/{base}{slash} (Ctrl-C ends it)");
    if options.end_with_input {
        std::thread::spawn(end_with_input);
    }
    let router = router(&dir, base)?;
    tokio::runtime::Builder::new_current_thread()
        .enable_io()
        .build()?
        .block_on(async {
            let listener = tokio::net::TcpListener::from_std(listener)?;
            axum::serve(listener, router).await
        })
        .context("the server stopped")
}

/// The files below `base`, with the headers that a careful host would send.
fn router(dir: &Path, base: &str) -> Result<Router> {
    let files = ServeDir::new(dir).precompressed_br().precompressed_gzip();
    let router = if base.is_empty() {
        Router::new().fallback_service(files)
    } else {
        Router::new().nest_service(&format!("/{base}"), files)
    };
    let policy = HeaderValue::from_str(&content_policy()?)?;
    let fixed =
        |name: HeaderName, value: HeaderValue| SetResponseHeaderLayer::overriding(name, value);
    Ok(router
        .layer(from_fn(mended))
        .layer(fixed(header::CONTENT_SECURITY_POLICY, policy))
        .layer(fixed(
            header::CACHE_CONTROL,
            HeaderValue::from_static("no-store"),
        ))
        .layer(fixed(
            header::X_CONTENT_TYPE_OPTIONS,
            HeaderValue::from_static("nosniff"),
        ))
        .layer(fixed(
            header::REFERRER_POLICY,
            HeaderValue::from_static("no-referrer"),
        )))
}

/// Sends a shared link on to its fragment when a mail program wrote its `#` as `%23` or `%2523`.
async fn mended(request: Request, next: Next) -> Response {
    match mended_path(request.uri().path()) {
        Some(path) => Redirect::temporary(&path).into_response(),
        None => next.run(request).await,
    }
}

/// The path with its first written-out `#` put back; on this host, whatever it begins with.
fn mended_path(path: &str) -> Option<String> {
    let (before, after) = path
        .split_once("%23")
        .or_else(|| path.split_once("%2523"))?;
    Some(format!("/{}#{after}", before.trim_start_matches('/')))
}

/// The page's own policy, and the part that only a header may hold.
pub(crate) fn content_policy() -> Result<String> {
    let file = root().join("www/index.html");
    let html =
        fs::read_to_string(&file).with_context(|| format!("could not read {}", file.display()))?;
    let policy = html
        .split_once("http-equiv=\"Content-Security-Policy\" content=\"")
        .and_then(|(_, rest)| rest.split_once('"'))
        .map(|(policy, _)| policy)
        .context("www/index.html has no Content-Security-Policy")?;
    Ok(format!("{policy}; frame-ancestors 'none'"))
}

/// Waits for the end of standard input, then ends the process.
fn end_with_input() {
    let mut rest = Vec::new();
    // Closed or broken, whoever held the other end is gone.
    let _ = std::io::stdin().read_to_end(&mut rest);
    std::process::exit(0);
}

#[cfg(test)]
mod tests {
    use super::mended_path;

    #[test]
    fn a_written_out_hash_is_put_back_on_this_host() {
        let mended = |path| mended_path(path);
        assert_eq!(mended("/%23gs1A").as_deref(), Some("/#gs1A"));
        assert_eq!(mended("/a/%2523gs1A").as_deref(), Some("/a/#gs1A"));
        assert_eq!(
            mended("//example.org/%23gs1A").as_deref(),
            Some("/example.org/#gs1A")
        );
        assert_eq!(mended("/style.css"), None);
    }
}
