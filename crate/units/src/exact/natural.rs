//! Whole numbers of any size, as far as the fractions need them.

use std::cmp::Ordering;

/// A whole number, 32-bit limbs, least first, no zero limb on top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Natural {
    limbs: Vec<u32>,
}

const LIMB_BITS: usize = 32;
const LIMB_MASK: u64 = u32::MAX as u64;

/// The low half of a two-limb word.
fn low(word: u64) -> u32 {
    u32::try_from(word & LIMB_MASK).unwrap_or(u32::MAX)
}

impl Natural {
    pub(crate) fn from_u128(value: u128) -> Self {
        let limbs = (0..4).map(|i| low((value >> (i * LIMB_BITS) & u128::from(LIMB_MASK)) as u64));
        Self::trimmed(limbs.collect())
    }

    /// Reads decimal digits; anything else is skipped.
    pub(crate) fn from_digits(digits: &str) -> Self {
        let mut value = Self::from_u128(0);
        for digit in digits.chars().filter_map(|c| c.to_digit(10)) {
            value.multiply_add(10, digit);
        }
        value
    }

    pub(crate) fn power_of_ten(exponent: usize) -> Self {
        let mut value = Self::from_u128(1);
        for _ in 0..exponent {
            value.multiply_add(10, 0);
        }
        value
    }

    fn trimmed(mut limbs: Vec<u32>) -> Self {
        while limbs.last() == Some(&0) {
            limbs.pop();
        }
        Self { limbs }
    }

    fn multiply_add(&mut self, by: u32, plus: u32) {
        let mut carry = u64::from(plus);
        for limb in &mut self.limbs {
            let word = u64::from(*limb) * u64::from(by) + carry;
            *limb = low(word);
            carry = word >> LIMB_BITS;
        }
        if carry != 0 {
            self.limbs.push(low(carry));
        }
    }

    pub(crate) fn is_zero(&self) -> bool {
        self.limbs.is_empty()
    }

    pub(crate) fn bit_length(&self) -> usize {
        let top = self
            .limbs
            .last()
            .map_or(0, |limb| LIMB_BITS - limb.leading_zeros() as usize);
        self.limbs.len().saturating_sub(1) * LIMB_BITS + top
    }

    fn bit(&self, index: usize) -> u32 {
        self.limbs
            .get(index / LIMB_BITS)
            .map_or(0, |limb| limb >> (index % LIMB_BITS) & 1)
    }

    pub(crate) fn times(&self, by: &Self) -> Self {
        let mut product = vec![0_u32; self.limbs.len() + by.limbs.len()];
        for (i, &a) in self.limbs.iter().enumerate() {
            let mut carry = 0_u64;
            let row = product.iter_mut().skip(i);
            let others = by
                .limbs
                .iter()
                .map(|&b| u64::from(b))
                .chain(std::iter::repeat(0));
            for (cell, b) in row.zip(others) {
                let word = u64::from(a) * b + u64::from(*cell) + carry;
                *cell = low(word);
                carry = word >> LIMB_BITS;
            }
        }
        Self::trimmed(product)
    }

    pub(crate) fn plus(&self, other: &Self) -> Self {
        let length = self.limbs.len().max(other.limbs.len()) + 1;
        let mut carry = 0_u64;
        let at = |n: &Self, i: usize| n.limbs.get(i).map_or(0, |&limb| u64::from(limb));
        let sum = (0..length).map(|i| {
            let word = at(self, i) + at(other, i) + carry;
            carry = word >> LIMB_BITS;
            low(word)
        });
        Self::trimmed(sum.collect())
    }

    /// `self − other`; zero where `other` is the larger one.
    pub(crate) fn minus(&self, other: &Self) -> Self {
        if self.compare(other) == Ordering::Less {
            return Self::from_u128(0);
        }
        let mut rest = self.clone();
        rest.subtract(other);
        rest
    }

    /// Takes `other` off; it must not be larger.
    fn subtract(&mut self, other: &Self) {
        let mut borrow = 0_u64;
        let others = other
            .limbs
            .iter()
            .map(|&b| u64::from(b))
            .chain(std::iter::repeat(0));
        for (limb, b) in self.limbs.iter_mut().zip(others) {
            let word = (1 << LIMB_BITS) + u64::from(*limb) - b - borrow;
            *limb = low(word);
            borrow = 1 - (word >> LIMB_BITS);
        }
        while self.limbs.last() == Some(&0) {
            self.limbs.pop();
        }
    }

    pub(crate) fn shifted_left(&self, bits: usize) -> Self {
        let mut limbs = vec![0_u32; bits / LIMB_BITS];
        limbs.extend_from_slice(&self.limbs);
        let mut shifted = Self::trimmed(limbs);
        shifted.multiply_add(1 << (bits % LIMB_BITS), 0);
        shifted
    }

    pub(crate) fn compare(&self, other: &Self) -> Ordering {
        let by_length = self.limbs.len().cmp(&other.limbs.len());
        by_length.then_with(|| self.limbs.iter().rev().cmp(other.limbs.iter().rev()))
    }

    /// Quotient and remainder, bit by bit. The quotient must fit 128 bits and the divisor not be zero:
    /// callers scale for the first and refuse the second.
    pub(crate) fn divided(&self, by: &Self) -> (u128, Self) {
        let (mut quotient, mut rest) = (0_u128, Self::from_u128(0));
        for index in (0..self.bit_length()).rev() {
            rest.multiply_add(2, self.bit(index));
            quotient <<= 1;
            if rest.compare(by) != Ordering::Less {
                rest.subtract(by);
                quotient |= 1;
            }
        }
        (quotient, rest)
    }
}
