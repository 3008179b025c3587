//! A file host of the journeys' own: it can be switched off, and another version of the page laid on it.

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};

use crate::server;

/// A running host; it ends with its journey.
pub struct Host {
    address: String,
    dir: Arc<Mutex<PathBuf>>,
    on: Arc<AtomicBool>,
}

impl Host {
    /// Serves the built page.
    pub async fn start() -> Result<Self> {
        // builds the page
        server::address()?;
        let dir = Arc::new(Mutex::new(server::built()));
        let on = Arc::new(AtomicBool::new(true));
        let listener = TcpListener::bind("127.0.0.1:0").await?;
        let address = format!("http://{}/", listener.local_addr()?);
        let (files, answers) = (dir.clone(), on.clone());
        tokio::spawn(async move {
            while let Ok((stream, _)) = listener.accept().await {
                // switched off, it hangs up
                if answers.load(Ordering::Relaxed) {
                    let dir = files.lock().map(|dir| dir.clone()).unwrap_or_default();
                    tokio::spawn(async move {
                        // a browser that hangs up asks again
                        let _ = answer(stream, &dir).await;
                    });
                }
            }
        });
        Ok(Self { address, dir, on })
    }

    /// Address of the page.
    #[must_use]
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Switches the host on or off.
    pub fn switch(&self, on: bool) {
        self.on.store(on, Ordering::Relaxed);
    }

    /// Lays another version of the page on the host: the built one whose file `index.html` says something more.
    pub fn lay(&self, into: &Path, more: &str) -> Result<()> {
        for entry in fs::read_dir(server::built())? {
            let entry = entry?;
            fs::copy(entry.path(), into.join(entry.file_name()))?;
        }
        let hash = |bytes: &[u8]| -> String {
            let digits = Sha256::digest(bytes);
            digits.iter().map(|byte| format!("{byte:02x}")).collect()
        };
        let (page, worker) = (into.join("index.html"), into.join("offline.js"));
        let before = fs::read_to_string(&page)?;
        let after = before.replace("</head>", &format!("{more}</head>"));
        let list = fs::read_to_string(&worker)?;
        fs::write(
            &worker,
            list.replace(&hash(before.as_bytes()), &hash(after.as_bytes())),
        )?;
        fs::write(&page, after)?;
        let mut dir = self.dir.lock().ok().context("the host is broken")?;
        *dir = into.to_owned();
        Ok(())
    }
}

/// Answers one question, then hangs up.
async fn answer(mut stream: TcpStream, dir: &Path) -> Result<()> {
    let mut asked = Vec::new();
    let mut part = [0; 4096];
    while !asked.windows(4).any(|end| end == b"\r\n\r\n") {
        match stream.read(&mut part).await? {
            0 => return Ok(()),
            count => asked.extend_from_slice(&part[..count]),
        }
    }
    let asked = String::from_utf8_lossy(&asked);
    let path = asked.split_whitespace().nth(1).unwrap_or("/");
    let name = path
        .split('?')
        .next()
        .unwrap_or("/")
        .trim_start_matches('/');
    let name = if name.is_empty() { "index.html" } else { name };
    let kind = match name.rsplit('.').next() {
        Some("html") => "text/html",
        Some("js") => "text/javascript",
        Some("css") => "text/css",
        Some("svg") => "image/svg+xml",
        Some("wasm") => "application/wasm",
        _ => "application/octet-stream",
    };
    let (status, body) = match fs::read(dir.join(name)) {
        Ok(bytes) if !name.contains("..") => ("200 OK", bytes),
        _ => ("404 Not Found", Vec::new()),
    };
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-store\r\nConnection: close\r\n\r\n",
        body.len()
    );
    stream.write_all(head.as_bytes()).await?;
    stream.write_all(&body).await?;
    stream.shutdown().await?;
    Ok(())
}
