//! Whom an address reaches.
use gearswing_report::page::link::Reach;

/// Whom an address of a page reaches, as far as the address tells.
///
/// Loopback and "this host": RFC 1122 section 3.2.1.3 (127/8, 0.0.0.0), RFC 4291 section 2.5.3 (::1), RFC 6761 section
/// 6.3 (localhost). Within a network: RFC 1918 section 3 and RFC 3927 (IPv4), RFC 4193 and RFC 4291 section 2.5.6 (IPv6),
/// RFC 6762 (.local), RFC 8375 (.home.arpa), and names without a dot.
pub(crate) fn reach(address: &str) -> Reach {
    let Some((scheme, rest)) = address.split_once("://") else {
        return Reach::Machine;
    };
    let host = rest.split(['/', '?', '#']).next().unwrap_or_default();
    let name = match host.strip_prefix('[') {
        Some(six) => six.split(']').next().unwrap_or_default(),
        None => host.split(':').next().unwrap_or_default(),
    };
    if scheme == "file" || name == "localhost" || name.ends_with(".localhost") {
        return Reach::Machine;
    }
    if host.starts_with('[') {
        return match name {
            "::1" | "::" => Reach::Machine,
            _ if ["fc", "fd", "fe80:"]
                .iter()
                .any(|net| name.starts_with(net)) =>
            {
                Reach::Network
            }
            _ => Reach::Everywhere,
        };
    }
    let is_number = name
        .bytes()
        .all(|byte| byte.is_ascii_digit() || byte == b'.');
    let begins = |nets: &[&str]| is_number && nets.iter().any(|net| name.starts_with(net));
    // 0.0.0.0 is where a server listens, not where others find it
    if begins(&["127.", "0.0.0.0"]) {
        return Reach::Machine;
    }
    let is_private = begins(&["10.", "192.168.", "169.254."]) || is_number && is_172_16(name);
    let is_local = [".local", ".home.arpa"]
        .iter()
        .any(|end| name.ends_with(end));
    if is_private || is_local || !name.contains('.') {
        Reach::Network
    } else {
        Reach::Everywhere
    }
}

/// 172.16/12.
fn is_172_16(name: &str) -> bool {
    let mut parts = name.split('.');
    parts.next() == Some("172")
        && parts
            .next()
            .and_then(|part| part.parse::<u8>().ok())
            .is_some_and(|part| (16..32).contains(&part))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_tells_whom_it_reaches() {
        for (address, reaches) in [
            ("http://127.0.0.1:8080/", Reach::Machine),
            ("http://127.9.9.9", Reach::Machine),
            ("http://0.0.0.0:8000/", Reach::Machine),
            ("http://localhost:8000/gear/", Reach::Machine),
            ("http://gear.localhost/", Reach::Machine),
            ("http://[::1]:8080/", Reach::Machine),
            ("file:///srv/gear/index.html", Reach::Machine),
            ("http://10.0.0.7/", Reach::Network),
            ("http://172.16.1.1/", Reach::Network),
            ("http://192.168.1.20:8080/", Reach::Network),
            ("http://169.254.3.4/", Reach::Network),
            ("http://[fd12::1]/", Reach::Network),
            ("http://[fe80::1]/", Reach::Network),
            ("http://hangar:8017/", Reach::Network),
            ("http://hangar.local/gear/", Reach::Network),
            ("http://hangar.home.arpa/", Reach::Network),
            ("https://example.org/localhost/", Reach::Everywhere),
            ("https://localhost.example.org/", Reach::Everywhere),
            ("http://127.example.org/", Reach::Everywhere),
            ("http://172.32.0.1/", Reach::Everywhere),
            ("http://10.example.org/", Reach::Everywhere),
            ("http://[2001:db8::1]/", Reach::Everywhere),
        ] {
            assert_eq!(reach(address), reaches, "{address}");
        }
    }
}
